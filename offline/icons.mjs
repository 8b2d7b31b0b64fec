// Draws the icons from one list of rectangles: a story pole on warm paper, its marks, and one of them in chalk blue.
//   node offline/icons.mjs     (only after a change of the drawing; the results are committed)
import { deflateSync, crc32 as zlibCrc } from "node:zlib";
import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const PAPER = "#f7f3ea", INK = "#2a2723", WOOD = "#d9c39a", CHALK = "#1f4e8c";
const out = join(dirname(fileURLToPath(import.meta.url)), "static");

// On a square of 64 units: x, y, width, height, colour. Later ones lie on top.
const pole = [
  [22, 4, 20, 56, INK],
  [23, 5, 18, 54, WOOD],
  ...[11, 17, 23, 29, 47, 53].map((y, i) => [i % 3 === 1 ? 31 : 34, y - 0.5, i % 3 === 1 ? 10 : 7, 1, INK]),
  [14, 36, 36, 5, CHALK], // the mark that was made: it goes beyond the stick, on to the wall
];

// Shrunk towards the middle: a maskable icon may lose all but the inner circle of four fifths.
const shrunk = (rects, by) => rects.map(([x, y, w, h, c]) => [32 + (x - 32) * by, 32 + (y - 32) * by, w * by, h * by, c]);
const paper = [0, 0, 64, 64, PAPER];

function svg(rects) {
  const n = (v) => String(Math.round(v * 100) / 100);
  const body = rects.map(([x, y, w, h, c]) => `<path fill="${c}" d="M${n(x)} ${n(y)}h${n(w)}v${n(h)}H${n(x)}z"/>`).join("");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64">${body}</svg>\n`;
}

function crc32(bytes) {
  if (zlibCrc) return zlibCrc(bytes);
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let k = 0; k < 8; k++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type), data]);
  const length = Buffer.alloc(4), crc = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  crc.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, crc]);
}

function png(rects, size) {
  const palette = [PAPER, INK, WOOD, CHALK];
  const rows = Array.from({ length: size }, () => Buffer.alloc(1 + size));
  for (const [x, y, w, h, c] of rects) {
    const px = (v) => Math.round(v * size / 64);
    for (let row = px(y); row < Math.max(px(y + h), px(y) + 1); row++) rows[row].fill(palette.indexOf(c), 1 + px(x), 1 + px(x + w));
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 3, 0, 0, 0], 8); // 8 bits, by palette
  return Buffer.concat([
    Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    chunk("IHDR", head),
    chunk("PLTE", Buffer.from(palette.flatMap((c) => [1, 3, 5].map((i) => parseInt(c.slice(i, i + 2), 16))))),
    chunk("IDAT", deflateSync(Buffer.concat(rows), { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

writeFileSync(join(out, "icon.svg"), svg([paper, ...pole]));
writeFileSync(join(out, "icon-192.png"), png([paper, ...pole], 192));
writeFileSync(join(out, "icon-512.png"), png([paper, ...pole], 512));
writeFileSync(join(out, "icon-maskable-512.png"), png([paper, ...shrunk(pole, 0.72)], 512));
