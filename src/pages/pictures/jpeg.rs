//! The parts of a JPEG file (ISO/IEC 10918-1, annex B): whether it is complete, and whether this program wrote it.

/// The first two bytes of every JPEG file.
pub(super) const START: [u8; 2] = [0xff, 0xd8];

const END: u8 = 0xd9;
const SCAN: u8 = 0xda;
const JFIF: u8 = 0xe0;
const BASELINE: u8 = 0xc0;
const HUFFMAN: u8 = 0xc4;
const QUANTIZATION: u8 = 0xdb;

/// A marker segment, or the end of the picture with the bytes after it.
enum Part<'a> {
    Segment { marker: u8, content: &'a [u8] },
    End { after: &'a [u8] },
}

/// The parts of a file in order, up to its end; the last is `None` if the file is cut off or not a JPEG.
fn parts(bytes: &[u8]) -> impl Iterator<Item = Option<Part<'_>>> {
    let mut rest = bytes.strip_prefix(&START);
    let mut is_done = false;
    std::iter::from_fn(move || {
        if is_done {
            return None;
        }
        let part = rest.and_then(next_part);
        is_done = !matches!(part, Some((Part::Segment { .. }, _)));
        Some(part.map(|(part, after)| {
            rest = Some(after);
            part
        }))
    })
}

fn next_part(bytes: &[u8]) -> Option<(Part<'_>, &[u8])> {
    let after_mark = bytes.strip_prefix(&[0xff])?;
    // Any number of fill bytes may precede a marker.
    let fill = after_mark.iter().take_while(|&&byte| byte == 0xff).count();
    let (&marker, rest) = after_mark.get(fill..)?.split_first()?;
    if marker == END {
        return Some((Part::End { after: rest }, &[]));
    }
    let length = usize::from(u16::from_be_bytes(rest.get(..2)?.try_into().ok()?));
    let content = rest.get(2..length)?;
    let mut rest = rest.get(length..)?;
    if marker == SCAN {
        rest = rest.get(scanned(rest)?..)?;
    }
    Some((Part::Segment { marker, content }, rest))
}

/// The number of bytes of a scan before the next marker; `None` if no marker follows.
fn scanned(bytes: &[u8]) -> Option<usize> {
    let is_marker = |pair: &[u8]| pair[0] == 0xff && !matches!(pair[1], 0 | 0xd0..=0xd7 | 0xff);
    bytes.windows(2).position(is_marker)
}

/// Whether a file has all its parts up to the end of its picture. More may follow: some cameras add a second
/// picture.
pub(super) fn is_whole(bytes: &[u8]) -> bool {
    matches!(parts(bytes).last(), Some(Some(Part::End { .. })))
}

/// The width and height, in pixels, of a picture that has only the parts this program writes: a JFIF header,
/// tables, one baseline frame of three colors and its scan. `None` for any other file, so nothing that a camera
/// adds can be in it.
pub(super) fn plain_size(bytes: &[u8]) -> Option<(u32, u32)> {
    let mut size = None;
    for (i, part) in parts(bytes).enumerate() {
        match part? {
            Part::End { after } => return size.filter(|_| after.is_empty()),
            Part::Segment { marker: JFIF, content } if i == 0 => {
                (content.len() == 14 && content.starts_with(b"JFIF\0")).then_some(())?;
            }
            Part::Segment { marker: BASELINE, content } => {
                let side = |at: usize| {
                    Some(u32::from(u16::from_be_bytes(content.get(at..at + 2)?.try_into().ok()?)))
                };
                (size.is_none() && content.len() == 15).then_some(())?;
                size = Some((side(3)?, side(1)?));
            }
            Part::Segment { marker: HUFFMAN | QUANTIZATION | SCAN, .. } if i > 0 => {}
            Part::Segment { .. } => return None,
        }
    }
    None
}
