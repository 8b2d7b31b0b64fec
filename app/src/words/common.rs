//! Words that more than one screen uses.

words! {
    app_name => "Roomwright" | "Roomwright";
    skip_to_main => "Skip to the page" | "Ir a la página";
    back => "Back" | "Atrás";
    add => "Add" | "Agregar";
    take_out => "Take out" | "Quitar";
    undo => "Undo" | "Deshacer";
    next => "Next" | "Siguiente";
    previous => "Previous" | "Anterior";
    done => "Done" | "Listo";
    close => "Close" | "Cerrar";
    yes => "Yes" | "Sí";
    no => "No" | "No";
    working => "Working" | "Cálculo paso a paso";
    rests_on => "What this rests on" | "En qué se basa";
    cautions => "Before you start" | "Antes de empezar";
    optional => "optional" | "opcional";
    language_label => "Language" | "Idioma";
    english => "English" | "English";
    spanish => "Español" | "Español";
    light_label => "Screen" | "Pantalla";
    light_auto => "As the device" | "Como el aparato";
    light_day => "Daylight" | "De día";
    light_basement => "Basement" | "Sótano";
    page_not_here => "There is no page at this address." | "No hay ninguna página en esta dirección.";
    to_jobs => "To the jobs" | "A los trabajos";
    jobs_short => "Jobs" | "Trabajos";
    sums_short => "Quick sums" | "Cuentas rápidas";
    still_missing => "Still missing" | "Falta";
    level => "Level" | "A nivel";
    flat => "Flat" | "Plano";
    feet_inches => "Feet and inches" | "Pies y pulgadas";
    metric => "Metric" | "Métrico";
    unit_in => "in" | "pulg";
    unit_ft => "ft" | "pies";
    unit_mm => "mm" | "mm";
    unit_m => "m" | "m";
    unit_bags => "bags" | "sacos";
    unit_percent => "%" | "%";
    unit_minutes => "min" | "min";
    bag_count(count: u64) => "{count} bags" | "{count} sacos";
    one_bag => "1 bag" | "1 saco";
    minutes(count: String) => "{count} min" | "{count} min";
    see_source(source: &str) => "Source: {source}" | "Fuente: {source}";
    common_practice => "common practice" | "práctica común del oficio";
    from_your_entry => "your entry" | "lo que escribió";
    arithmetic => "arithmetic" | "aritmética";
    local_code => "Your local code and the product's own instructions decide."
        | "Deciden el código local y las instrucciones del producto.";
    stages => "Stages of the work" | "Etapas del trabajo";
    stage_decided => "decided" | "decidido";
    stage_open => "open" | "pendiente";
    other_places => "Other places" | "Otros lugares";
    corner => "Corner" | "Esquina";
    none => "none" | "ninguno";
}
