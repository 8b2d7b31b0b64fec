//! The gallery of widgets and pictures; read by those who build the app.

words! {
    title => "Gallery" | "Muestrario";
    entry => "Entry" | "Entrada";
    empty => "Empty" | "Vacío";
    filled => "Filled" | "Lleno";
    refused => "Refused" | "Rechazado";
    with_tape => "With its tape" | "Con su cinta";
    choice => "Choice" | "Elección";
    first => "First" | "Primero";
    second => "Second" | "Segundo";
    actions => "Actions" | "Acciones";
    main_action => "Main action" | "Acción principal";
    other_action => "Another action" | "Otra acción";
    take_out => "Take out" | "Quitar";
    not_now => "Not now" | "Ahora no";
    figures => "Figures" | "Cifras";
    notices => "Notices" | "Avisos";
    a_notice => "Something to know." | "Algo que saber.";
    look => "Something to look at." | "Algo que revisar.";
    pictures => "Pictures" | "Dibujos";
    plan => "Plan with pins" | "Plano con clavos";
    section => "Section" | "Corte";
    ramp => "Ramp" | "Rampa";
    floors => "Both floors at a jamb" | "Los dos pisos en una jamba";
    box_fill => "Box filled to volume" | "Caja llena a volumen";
    drop_plot => "Voltage against distance" | "Voltaje contra distancia";
    switches => "Cables between switches" | "Cables entre apagadores";
    panel => "Panel as it hangs" | "Panel como cuelga";
    strips => "Strips against their limits" | "Tiras contra sus límites";
    pole => "Story pole" | "Regla de obra";
}
