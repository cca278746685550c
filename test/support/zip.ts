/**
 * Reads a ZIP archive without ZIP64 or encryption, by its central directory (APPNOTE.TXT of PKWARE, sections 4.3.7, 4.3.12 and 4.3.16; from
 * memory).
 */
import type { Buffer } from 'node:buffer';
import { crc32, inflateRawSync } from 'node:zlib';

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const END_BYTES = 22;
const ENTRY_BYTES = 46;
const LOCAL_BYTES = 30;

/** Files by path, in the order of the directory. Throws where the archive is damaged. */
export function readZip(archive: Buffer): ReadonlyMap<string, Buffer> {
  const end = findEnd(archive);
  const count = archive.readUInt16LE(end + 10);
  const files = new Map<string, Buffer>();
  let at = archive.readUInt32LE(end + 16);
  for (let i = 0; i < count; i++) {
    if (archive.readUInt32LE(at) !== ENTRY) throw new Error(`there is no entry at byte ${at}`);
    const nameBytes = archive.readUInt16LE(at + 28);
    const name = archive.toString('utf8', at + ENTRY_BYTES, at + ENTRY_BYTES + nameBytes);
    files.set(name, contentOf(archive, at, name));
    at += ENTRY_BYTES + nameBytes + archive.readUInt16LE(at + 30) + archive.readUInt16LE(at + 32);
  }
  return files;
}

/** A comment of any length may follow the end's record. */
function findEnd(archive: Buffer): number {
  for (let at = archive.length - END_BYTES; at >= 0; at--) if (archive.readUInt32LE(at) === END) return at;
  throw new Error('this is no ZIP archive');
}

function contentOf(archive: Buffer, entry: number, name: string): Buffer {
  const method = archive.readUInt16LE(entry + 10);
  const local = archive.readUInt32LE(entry + 42);
  const start = local + LOCAL_BYTES + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28);
  const packed = archive.subarray(start, start + archive.readUInt32LE(entry + 20));
  if (method !== 0 && method !== 8) throw new Error(`${name} is packed by method ${method}`);
  const content = method === 0 ? packed : inflateRawSync(packed);
  if (crc32(content) !== archive.readUInt32LE(entry + 16)) throw new Error(`${name} is damaged`);
  return content;
}
