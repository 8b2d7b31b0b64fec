//! What the checks share: the case files' runner, the server and the browser.
