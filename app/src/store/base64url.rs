//! Bytes as text for an address: base64 with the URL alphabet, without padding (RFC 4648, section 5).

const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Bytes to text.
pub fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let bits = (0..3).fold(0_u32, |bits, n| {
            bits << 8 | u32::from(three.get(n).copied().unwrap_or(0))
        });
        for n in 0..=three.len() {
            text.push(char::from(ALPHABET[(bits >> (18 - 6 * n) & 63) as usize]));
        }
    }
    text
}

/// Text to bytes; none where it is not base64url, or not the one text for its bytes.
pub fn decode(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3 + 2);
    for four in text.as_bytes().chunks(4) {
        let mut bits = 0_u32;
        for n in 0..4 {
            bits = bits << 6 | four.get(n).map_or(Some(0), |&c| value_of(c))?;
        }
        let whole = four.len().checked_sub(1).filter(|&whole| whole > 0)?;
        let [_, three @ ..] = bits.to_be_bytes();
        let (given, left_over) = three.split_at(whole);
        if left_over.iter().any(|&byte| byte != 0) {
            return None;
        }
        bytes.extend_from_slice(given);
    }
    Some(bytes)
}

fn value_of(c: u8) -> Option<u32> {
    let (first, base) = match c {
        b'A'..=b'Z' => (b'A', 0),
        b'a'..=b'z' => (b'a', 26),
        b'0'..=b'9' => (b'0', 52),
        b'-' => return Some(62),
        b'_' => return Some(63),
        _ => return None,
    };
    Some(u32::from(c - first) + base)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn test_vectors_of_rfc_4648() {
        // Section 10, without the padding; the last two use the characters that differ (section 5, table 2).
        for (bytes, text) in [
            (&b""[..], ""),
            (b"f", "Zg"),
            (b"fo", "Zm8"),
            (b"foo", "Zm9v"),
            (b"foob", "Zm9vYg"),
            (b"fooba", "Zm9vYmE"),
            (b"foobar", "Zm9vYmFy"),
            (&[0xfb, 0xff], "-_8"),
            (&[0xff, 0xff, 0xfe], "___-"),
        ] {
            assert_eq!(encode(bytes), text);
            assert_eq!(decode(text).as_deref(), Some(bytes));
        }
        for wrong in [
            "Z", "Zm9vY", "Zg==", "Zm9+", "Zm9/", "Zh", "Zm9", "Zm8 ", "Zmü",
        ] {
            assert_eq!(decode(wrong), None, "{wrong}");
        }
    }

    proptest! {
        #[test]
        fn any_bytes_come_back(bytes: Vec<u8>) {
            prop_assert_eq!(decode(&encode(&bytes)), Some(bytes));
        }

        #[test]
        fn a_text_read_is_the_text_written(text in "[A-Za-z0-9_-]{0,40}") {
            if let Some(bytes) = decode(&text) {
                prop_assert_eq!(encode(&bytes), text);
            }
        }
    }
}
