import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonicalJson } from './canonical.ts'
import type { Posting } from './posting.ts'

export const sha256Hex = (bytes: Uint8Array): string => bytesToHex(sha256(bytes))

/** [P1] The name of a posting: SHA-256 of the canonical JSON of all of it but the hash, 64 hexadecimal digits. */
export const postingHash = (posting: Omit<Posting, 'hash'>): string =>
  sha256Hex(utf8ToBytes(canonicalJson({ ...posting, hash: undefined })))
