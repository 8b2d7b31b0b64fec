//! Every key that the app has in storage.
//!
//! A job's id has no dot in it ([`calc::job::file::is_job_id`]), so no id can make one key look like another.

use calc::job::file::is_job_id;

/// What every key of the app begins with.
pub const PREFIX: &str = "roomwright.";

/// The list of jobs; can be rebuilt from the jobs at any time.
pub const INDEX: &str = "roomwright.index";

/// The language chosen.
pub const LANG: &str = "roomwright.lang";

/// What was typed into the quick sums.
pub const SUMS: &str = "roomwright.sums";

/// The room of the quick sums of closing up.
pub const SUM_ROOM: &str = "roomwright.sums.room";

/// The id of the job opened last.
pub const LAST: &str = "roomwright.last";

/// Set once the browser was asked to keep storage.
pub const PERSIST: &str = "roomwright.persist";

const JOB: &str = "roomwright.job.";
const DELETED: &str = "roomwright.deleted.";
const DAMAGED: &str = "roomwright.damaged.";

/// The current text of a job.
pub fn job(id: &str) -> String {
    format!("{JOB}{id}")
}

/// The good text that was current before.
pub fn previous(id: &str) -> String {
    format!("{JOB}{id}.previous")
}

/// The text of a deleted job, until it is purged.
pub fn deleted(id: &str) -> String {
    format!("{DELETED}{id}")
}

/// A text that could not be read, put aside; `n` counts from 1.
pub fn damaged(id: &str, n: usize) -> String {
    format!("{DAMAGED}{id}.{n}")
}

/// The id in the key of a job's current text.
pub fn job_id(key: &str) -> Option<&str> {
    key.strip_prefix(JOB).filter(|id| is_job_id(id))
}

/// The id in the key of a deleted job.
pub fn deleted_id(key: &str) -> Option<&str> {
    key.strip_prefix(DELETED).filter(|id| is_job_id(id))
}

/// The id and number in the key of a text put aside.
pub fn damaged_id(key: &str) -> Option<(&str, usize)> {
    let (id, n) = key.strip_prefix(DAMAGED)?.split_once('.')?;
    Some((id, n.parse().ok()?)).filter(|(id, _)| is_job_id(id))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_gives_back_its_id_and_no_other_key_does() {
        assert_eq!(job_id(&job("a-1")), Some("a-1"));
        assert_eq!(deleted_id(&deleted("a-1")), Some("a-1"));
        assert_eq!(damaged_id(&damaged("a-1", 12)), Some(("a-1", 12)));
        for key in [
            &previous("a-1"),
            &deleted("a-1"),
            &damaged("a-1", 1),
            INDEX,
            LANG,
            SUMS,
            LAST,
            PERSIST,
        ] {
            assert_eq!(job_id(key), None, "{key}");
            assert!(key.starts_with(PREFIX));
        }
        assert_eq!(damaged_id("roomwright.damaged.a"), None);
        assert_eq!(damaged_id("roomwright.damaged.a.x"), None);
        assert_eq!(job_id("roomwright.job."), None);
    }
}
