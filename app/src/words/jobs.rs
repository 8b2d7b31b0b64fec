//! The jobs screen and a job's own page.

words! {
    title => "Jobs on this device" | "Trabajos en este aparato";
    none_yet => "No job here yet. Start with a room: its walls, then the spots on its floor."
        | "Todavía no hay trabajos. Empiece por un cuarto: sus paredes y luego los puntos del piso.";
    new_job => "New job" | "Trabajo nuevo";
    open_demo => "Open the worked example" | "Abrir el ejemplo resuelto";
    bring_in => "Bring in a job file" | "Traer un archivo de trabajo";
    name_label => "Job name" | "Nombre del trabajo";
    place_label => "Place" | "Lugar";
    notes_label => "Notes" | "Notas";
    units_label => "Measure in" | "Medir en";
    rooms_heading => "Rooms" | "Cuartos";
    house_heading => "The house" | "La casa";
    add_room => "Add a room" | "Agregar un cuarto";
    room_name_label => "Room name" | "Nombre del cuarto";
    untitled => "Job without a name" | "Trabajo sin nombre";
    untitled_room => "Room" | "Cuarto";
    changed(when: &str) => "changed {when}" | "cambiado {when}";
    rooms_count(count: usize) => "{count} rooms" | "{count} cuartos";
    room_count_one => "1 room" | "1 cuarto";
    keep_heading => "Keep and carry" | "Guardar y llevar";
    keep_why => "Jobs live in this browser. A saved file is your backup."
        | "Los trabajos viven en este navegador. Un archivo guardado es su respaldo.";
    save_file => "Save a file" | "Guardar un archivo";
    share_link => "Copy a link that holds the job" | "Copiar un enlace que contiene el trabajo";
    share_sheet => "Send" | "Enviar";
    link_copied => "The link is on the clipboard. Whoever opens it gets a copy of the job; nothing is sent to a server."
        | "El enlace está en el portapapeles. Quien lo abra recibe una copia del trabajo; nada se envía a un servidor.";
    link_by_hand => "Copy this link:" | "Copie este enlace:";
    duplicate => "Duplicate" | "Duplicar";
    delete => "Delete" | "Borrar";
    deleted(name: &str) => "“{name}” is deleted." | "«{name}» está borrado.";
    copy_of(name: &str) => "{name} (copy)" | "{name} (copia)";
    imported(name: &str) => "“{name}” is here." | "«{name}» ya está aquí.";
    link_job(name: &str) => "This link holds the job “{name}”." | "Este enlace contiene el trabajo «{name}».";
    link_keep => "Keep it on this device" | "Guardarlo en este aparato";
    link_leave => "Leave it" | "Dejarlo";
    same_id_here => "This job is already on this device." | "Este trabajo ya está en este aparato.";
    replace => "Replace the one here" | "Reemplazar el de aquí";
    keep_both => "Keep both" | "Quedarse con los dos";
    deleted_jobs(count: usize) => "Deleted jobs ({count})" | "Trabajos borrados ({count})";
    deleted_hint => "They stay on this device until you delete them for good or the room is needed."
        | "Se quedan en este aparato hasta que los borre del todo o haga falta el espacio.";
    delete_for_good => "Delete for good" | "Borrar del todo";
    deleted_in_use => "A job of the same origin is here again. Delete or save that one first."
        | "Ya hay aquí otra vez un trabajo del mismo origen. Borre o guarde primero ese.";
    no_such_job => "This job is not on this device." | "Este trabajo no está en este aparato.";
    damaged_here => "This job's stored text is damaged. Nothing was thrown away."
        | "El texto guardado de este trabajo está dañado. No se tiró nada.";
    download_damaged => "Save the damaged text" | "Guardar el texto dañado";
    open_previous => "Open the last good version" | "Abrir la última versión buena";
    to_room => "Next: the room" | "Sigue: el cuarto";
    take_out_room => "Take out this room" | "Quitar este cuarto";
    what_next => "Next" | "Sigue";
    demo_name => "Corner house" | "Casa de la esquina";
    demo_place => "the worked example" | "el ejemplo resuelto";
    demo_room => "Back bedroom" | "Recámara de atrás";
    demo_door => "hall door" | "puerta al pasillo";
    demo_closet => "closet" | "clóset";
    overview => "Job" | "Trabajo";
}
