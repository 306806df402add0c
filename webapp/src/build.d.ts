/** Bytes of Python's packs together; the build puts the number in. */
declare const PACK_BYTES: number;
