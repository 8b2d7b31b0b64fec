//! Decimal numbers and small letters, without the tables that the standard library needs for every number and every
//! script: 20 kB of the download, which do not compress.

/// The number that digits with at most one point stand for: the nearest double, ties to even. Nothing for anything
/// else. Of the digits from the first that is not zero 38 count, and of the decimals 38.
///
/// ```
/// use calc::quantity::decimal;
/// assert_eq!(decimal("87.6"), Some(87.6));
/// assert_eq!(decimal(".5"), Some(0.5));
/// assert_eq!(decimal("7e3"), None);
/// ```
pub fn decimal(text: &str) -> Option<f64> {
    /// 10 to the 38th is the largest power of ten that fits in 127 bits, so that twice a remainder fits in 128.
    const MOST: u32 = 38;
    let (mut digits, mut counted, mut decimals) = (0_u128, 0, 0);
    let (mut any, mut point, mut more, mut left_out) = (false, false, false, 0);
    for byte in text.bytes() {
        match byte {
            b'0'..=b'9' => {
                any = true;
                let digit = u128::from(byte - b'0');
                if counted == MOST || decimals == MOST {
                    more |= digit != 0;
                    left_out += i32::from(!point);
                } else {
                    digits = digits * 10 + digit;
                    counted += u32::from(digits != 0);
                    decimals += u32::from(point);
                }
            }
            b'.' if !point => point = true,
            _ => return None,
        }
    }
    if !any {
        return None;
    }
    let divisor = 10_u128.pow(decimals);
    let (mut bits, mut rest, mut halvings) = (digits / divisor, digits % divisor, 0_u64);
    if bits == 0 && rest == 0 {
        return Some(0.0);
    }
    // Two bits more than a double keeps, and the lowest of them set where anything is left: then it rounds as the
    // whole would.
    while bits < 1 << 54 {
        rest *= 2;
        bits = bits * 2 + u128::from(rest >= divisor);
        rest -= if rest >= divisor { divisor } else { 0 };
        halvings += 1;
    }
    bits |= u128::from(rest != 0 || more);
    let two_to_minus = f64::from_bits((1023 - halvings) << 52);
    Some(bits as f64 * two_to_minus * 10_f64.powi(left_out))
}

/// A text in small letters: those of English and of the languages of western Europe.
///
/// ```
/// assert_eq!(calc::quantity::lower("PIÉ Ft"), "pié ft");
/// ```
pub fn lower(text: &str) -> String {
    let small = |c: char| match c {
        'A'..='Z' | 'À'..='Ö' | 'Ø'..='Þ' => char::from_u32(u32::from(c) + 32).unwrap_or(c),
        c => c,
    };
    text.chars().map(small).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The standard library's own reading is the reference.
    #[track_caller]
    fn as_std(text: &str) {
        let expected: f64 = text.parse().unwrap();
        let found = decimal(text).unwrap();
        assert_eq!(
            found.to_bits(),
            expected.to_bits(),
            "{text}: {found}, {expected}"
        );
    }

    proptest! {
        #[test]
        fn decimals_are_the_nearest_doubles(text in "[0-9]{1,20}([.][0-9]{0,18})?") {
            as_std(&text);
        }

        #[test]
        fn small_decimals_are_the_nearest_doubles(text in "0?[.]0{0,19}[0-9]{1,19}") {
            as_std(&text);
        }

        #[test]
        fn every_double_is_read_back(value in 1e-15..1e15_f64) {
            as_std(&format!("{value}"));
        }

        #[test]
        fn small_letters_are_the_standard_librarys(text in "[\u{0}-\u{ff}]{0,20}") {
            prop_assert_eq!(lower(&text), text.to_lowercase());
        }
    }

    #[test]
    fn ties_and_ends() {
        // Half-way between two doubles, a hair above and a hair below (IEEE 754, ties to even).
        for text in [
            "9007199254740993",
            "9007199254740993.0000000000000000000001",
            "9007199254740992.9999999999999999999999",
            "0.1",
            "0.3",
            "1.",
            ".1",
            "000.000",
            "4503599627370496.5",
            "99999999999999999999999999999999999999",
        ] {
            as_std(text);
        }
        let long = decimal(&"9".repeat(60)).unwrap();
        assert!((long / 1e60 - 1.0).abs() < 1e-12, "{long}");
        assert_eq!(decimal(&"9".repeat(400)), Some(f64::INFINITY));
        let tail = format!("0.5{}1", "0".repeat(60));
        assert_eq!(decimal(&tail), Some(0.5));
        for bad in ["", ".", "1.2.3", "-1", "1e3", "\u{661}", "inf", " 1"] {
            assert_eq!(decimal(bad), None, "{bad}");
        }
    }
}
