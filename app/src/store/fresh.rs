//! A new job's id, and the time.

/// The time now, RFC 3339 in UTC.
pub fn now() -> String {
    js_sys::Date::new_0().to_iso_string().into()
}

/// A new job's id: the time and a random part, so that jobs made on two devices don't clash.
pub fn job_id() -> String {
    id_of(js_sys::Date::now(), js_sys::Math::random())
}

/// Milliseconds since 1970 and a random share from 0 to 1 as base-36 digits.
fn id_of(now_ms: f64, share: f64) -> String {
    const SIX_DIGITS: f64 = 2_176_782_336.0; // 36^6
    format!(
        "{}-{}",
        base36(now_ms as u64),
        base36((share * SIX_DIGITS) as u64)
    )
}

fn base36(mut n: u64) -> String {
    let mut digits = Vec::new();
    loop {
        digits.extend(char::from_digit((n % 36) as u32, 36));
        n /= 36;
        if n == 0 {
            return digits.iter().rev().collect();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_fit_for_keys() {
        assert_eq!(id_of(1_772_438_400_000.0, 0.5), "mm8w2680-i00000");
        assert_eq!(id_of(0.0, 0.0), "0-0");
        for id in [
            id_of(1.8e12, 0.999_999),
            id_of(f64::MAX, 1.0),
            id_of(f64::NAN, f64::NAN),
        ] {
            assert!(calc::job::file::is_job_id(&id), "{id}");
        }
    }
}
