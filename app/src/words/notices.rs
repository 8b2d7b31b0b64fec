//! Storage, files, links, offline: what happened and the way out.

use calc::job::file::JobRefusal;

use crate::store::files::FileRefusal;
use crate::store::link::LinkRefusal;
use crate::store::{SaveRefusal, ShelfRefusal};

words! {
    blocked => "This browser keeps nothing here: storage is blocked, as in a private window. What you enter is gone when the page closes; save a file."
        | "Este navegador no guarda nada aquí: el almacenamiento está bloqueado, como en una ventana privada. Lo que escriba se pierde al cerrar la página; guarde un archivo.";
    full => "The browser's storage is full. The last changes are on screen but not kept; save a file, or delete a job that is done."
        | "El almacenamiento del navegador está lleno. Los últimos cambios están en pantalla pero no guardados; guarde un archivo o borre un trabajo terminado.";
    conflict => "This job was changed in another tab. Nothing is overwritten until you choose."
        | "Este trabajo se cambió en otra pestaña. No se sobrescribe nada hasta que usted elija.";
    keep_mine => "Keep what is on this screen" | "Quedarse con lo de esta pantalla";
    take_theirs => "Take the other tab's" | "Tomar lo de la otra pestaña";
    deleted_elsewhere => "This job was deleted in another tab." | "Este trabajo se borró en otra pestaña.";
    put_back => "Put it back" | "Recuperarlo";
    would_not_open => "This job would not open again as it is; the last good version is kept. Save a file and undo the last change."
        | "Este trabajo no se volvería a abrir tal como está; se conserva la última versión buena. Guarde un archivo y deshaga el último cambio.";
    try_again => "Try again" | "Intentar otra vez";
    file_too_large(size: String) => "The file is {size}; a job is at most 5 MB." | "El archivo mide {size}; un trabajo mide a lo más 5 MB.";
    file_not_text => "The file isn't text, so it can't be a job." | "El archivo no es texto, así que no puede ser un trabajo.";
    file_not_json(line: usize) => "The file isn't a job: it stops making sense at line {line}." | "El archivo no es un trabajo: deja de entenderse en la línea {line}.";
    file_not_a_job => "The file isn't a job from this app." | "El archivo no es un trabajo de esta aplicación.";
    file_newer(given: u64, known: u32) => "The job was saved by a newer version of this app (format {given}; this one reads up to {known}). Update, then open it."
        | "El trabajo se guardó con una versión más nueva (formato {given}; esta lee hasta {known}). Actualice y luego ábralo.";
    file_damaged(place: &str) => "The job is damaged at “{place}”." | "El trabajo está dañado en «{place}».";
    file_unreadable => "The file can't be read. Try choosing it again." | "El archivo no se puede leer. Intente elegirlo otra vez.";
    cannot_here => "This browser can't do that here. Save a file instead." | "Este navegador no puede hacer eso aquí. Mejor guarde un archivo.";
    link_damaged => "The link is cut short or changed. Ask for it again, or for a file." | "El enlace está cortado o cambiado. Pídalo otra vez, o pida un archivo.";
    link_unsupported => "This browser can't open or make such links. Use a file." | "Este navegador no puede abrir ni crear estos enlaces. Use un archivo.";
    update_ready => "A new version is ready. Everything you typed is saved." | "Hay una versión nueva. Todo lo que escribió está guardado.";
    update_now => "Use it now" | "Usarla ahora";
    update_later => "Later" | "Después";
    ready_offline => "Ready to work without a signal." | "Listo para trabajar sin señal.";
    save_state_saved => "Saved on this device" | "Guardado en este aparato";
}

/// Why storage did not do as asked.
pub fn shelf_refusal(refusal: &ShelfRefusal) -> &'static str {
    match refusal {
        ShelfRefusal::Full => full(),
        ShelfRefusal::Blocked => blocked(),
    }
}

/// Why a job was not saved.
pub fn save_refusal(refusal: &SaveRefusal) -> &'static str {
    match refusal {
        SaveRefusal::Conflict { .. } => conflict(),
        SaveRefusal::Deleted => deleted_elsewhere(),
        SaveRefusal::Full => full(),
        SaveRefusal::Blocked => blocked(),
        SaveRefusal::WouldNotOpen(_) => would_not_open(),
    }
}

/// Bytes as people say them.
fn size(bytes: usize) -> String {
    format!("{}.{} MB", bytes / 1_000_000, bytes / 100_000 % 10)
}

/// Why a text is not taken as a job.
pub fn job_refusal(refusal: &JobRefusal) -> String {
    match refusal {
        JobRefusal::TooLarge { bytes, .. } => file_too_large(size(*bytes)),
        JobRefusal::NotText { .. } => file_not_text().to_owned(),
        JobRefusal::NotJson { line, .. } => file_not_json(*line),
        JobRefusal::NotAJob => file_not_a_job().to_owned(),
        JobRefusal::NewerVersion { given, known } => file_newer(*given, *known),
        JobRefusal::Damaged { at, .. } => file_damaged(at),
    }
}

/// Why a file could not be handled.
pub fn file_refusal(refusal: &FileRefusal) -> String {
    match refusal {
        FileRefusal::TooLarge { bytes, .. } => file_too_large(size(*bytes)),
        FileRefusal::NotRead => file_unreadable().to_owned(),
        FileRefusal::Unsupported | FileRefusal::Dismissed => cannot_here().to_owned(),
    }
}

/// Why a link holds no job.
pub fn link_refusal(refusal: &LinkRefusal) -> String {
    match refusal {
        LinkRefusal::NotALink | LinkRefusal::Damaged { .. } => link_damaged().to_owned(),
        LinkRefusal::TooLarge { most } => file_too_large(size(*most)),
        LinkRefusal::Newer { given, known } => file_newer(*given, *known),
        LinkRefusal::Unsupported => link_unsupported().to_owned(),
    }
}
