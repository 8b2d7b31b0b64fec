//! Why an opened box can't be answered, and what would change that.

words! {
    heading => "This can't be answered yet" | "Todavía no se puede responder";
    no_box => "No box is described. Add one." | "No hay ninguna caja descrita. Agregue una.";
    empty_box(name: &str) => "No cable enters {name}. Add a cable." | "Ningún cable entra a {name}. Agregue un cable.";
    conductors(letter: &str) => "Cable {letter} needs 1 to 12 wires. Tap its colors." | "El cable {letter} necesita de 1 a 12 alambres. Toque sus colores.";
    hots(letter: &str) => "Say which breaker a wire of cable {letter} is on." | "Diga en qué breaker está un alambre del cable {letter}.";
    loads(letter: &str) => "Say what the load on cable {letter} is." | "Diga qué carga hay en el cable {letter}.";
    to_box(letter: &str) => "Choose the box that cable {letter} goes to." | "Elija la caja a la que va el cable {letter}.";
    to_itself(letter: &str) => "Cable {letter} goes to its own box. Choose another." | "El cable {letter} va a su propia caja. Elija otra.";
    far_switch(letter: &str) => "The switch on cable {letter} has no wire for each of its screws. A three-way needs three, a single switch two."
        | "El apagador del cable {letter} no tiene un alambre para cada tornillo. Uno de tres vías necesita tres; uno sencillo, dos.";
    load_across(letter: &str) => "The load on cable {letter} needs two different wires of it." | "La carga del cable {letter} necesita dos alambres distintos.";
    load_watts => "Enter the watts of each load, up to 50,000." | "Escriba los watts de cada carga, hasta 50,000.";
    length(letter: &str) => "Enter a length of cable {letter} between 0 and 2000 ft, or leave it empty." | "Escriba un largo del cable {letter} entre 0 y 2000 pies, o déjelo vacío.";
    no_ohms(letter: &str) => "The table has no resistance for the wire of cable {letter}. Choose another size." | "La tabla no tiene resistencia para el alambre del cable {letter}. Elija otro calibre.";
    breaker(name: &str) => "Breaker {name}: enter its rating." | "Breaker {name}: escriba su amperaje.";
    breaker_gone(name: &str) => "Breaker {name} is no longer in the panel. Choose another." | "El breaker {name} ya no está en el panel. Elija otro.";
    poles(name: &str) => "Breaker {name} has no such pole. Choose one it has." | "El breaker {name} no tiene ese polo. Elija uno que tenga.";
    no_breaker(letter: &str) => "Cable {letter} is on a breaker that was taken out. Choose another." | "El cable {letter} está en un breaker que se quitó. Elija otro.";
    leg_volts(v: String) => "{v} V is not what a leg has. Look at the voltages entered at the panel: 80 to 160 V each." | "{v} V no es lo que tiene una fase. Revise los voltajes del panel: de 80 a 160 V cada una.";
    supply => "The voltages entered at the panel can't be read. Look at them there." | "Los voltajes del panel no se pueden leer. Revíselos allá.";
    place(what: &str) => "{what} can't be where it is. Tap it in the grid again." | "{what} no puede estar donde está. Tóquelo otra vez en la cuadrícula.";
    twice(what: &str) => "{what} is in the grid twice." | "{what} está dos veces en la cuadrícula.";
    short(one: &str, other: &str, volts: String) => "One piece of metal joins {one} and {other}: a dead short of {volts} V. No breaker holds that; one wire is in another joint than entered."
        | "Una sola pieza de metal une {one} y {other}: un corto de {volts} V. Ningún breaker lo aguanta; algún alambre está en otra unión.";
    short_here => "A short of two hots, or of a hot and neutral or ground, passes through these joints." | "Por estas uniones pasa un corto de dos vivos, o de un vivo y neutro o tierra.";
    on_leg(name: &str, leg: &str) => "{name} (leg {leg})" | "{name} (fase {leg})";
    entry => "An entry below is missing or can't be read; it is marked there." | "Falta un dato abajo o no se puede leer; está marcado allí.";
    same => "Two rows have one number. Take one out and add it again." | "Dos renglones tienen el mismo número. Quite uno y agréguelo otra vez.";
    switched_short => "With the switches set so, two hots or a hot and ground meet: a dead short." | "Con los apagadores así, se juntan dos vivos o un vivo y tierra: un corto.";
}
