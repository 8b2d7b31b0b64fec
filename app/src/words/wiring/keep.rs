//! Words for keeping a quick sum of the wiring into a job.

words! {
    box_hint => "The box goes to the job's boxes, with all that is in it." | "La caja pasa a las cajas del trabajo, con todo lo que tiene.";
    ampacity_hint => "The wire, the air round it and what it lies with go to a circuit. The load follows there from what is on the circuit."
        | "El alambre, el aire que lo rodea y con qué va junto pasan a un circuito. La carga sale ahí de lo que tiene el circuito.";
    drop_hint => "The run and its wire go to a circuit. The loads go along where the circuit has none of its own."
        | "El tramo y su alambre pasan a un circuito. Las cargas van también si el circuito no tiene las suyas.";
    cable_hint => "The way of the cable goes to a circuit as its run: a stretch for each piece, as long as its path."
        | "El camino del cable pasa a un circuito como su tramo: uno por cada pieza, tan largo como su recorrido.";
    which_circuit => "Circuit" | "Circuito";
    new_circuit => "a new circuit" | "un circuito nuevo";
    kept(what: &str, job: &str) => "Kept as “{what}” in “{job}”." | "Guardado como «{what}» en «{job}».";
    open_there => "Open it there" | "Abrirlo ahí";
    taken_back => "Taken back. The job is as it was." | "Deshecho. El trabajo quedó como estaba.";
    changed_since => "The job was changed since, so nothing is taken back. Take it out there." | "El trabajo cambió después, así que no se deshizo nada. Quítelo ahí.";
    drop_cant => "No circuit of a job has three phases, or a load in ohms. Change that here, or enter the run in the circuit."
        | "Ningún circuito de un trabajo tiene tres fases ni una carga en ohms. Cámbielo aquí, o anote el tramo en el circuito.";
    cable_cant => "The run has no answer yet. Enter what is missing above." | "El recorrido todavía no tiene respuesta. Escriba arriba lo que falta.";
}
