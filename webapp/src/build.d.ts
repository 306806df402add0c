/** Bytes of Python's packs together; the build puts the number in. */
declare const PACK_BYTES: number;
/** Modules of machine code that come in packs of their own, such as "numpy.linalg._umath_linalg". */
declare const EXTENSIONS: string[];

/** The files of the reader of displays. */
declare const READER: Record<string, { bytes: number; hash: string }>;
