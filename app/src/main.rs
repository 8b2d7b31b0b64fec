//! The program's start: see the library half for everything else.

fn main() {
    app::start();
}
