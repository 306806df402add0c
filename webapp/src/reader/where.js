/** Where the files of the reader of displays lie: on the host, and on this device once got. */

export const FOLDER = "reader/";

/** The name holds the app's own address: other apps may live on the same host. @param {string} scope */
export const readerCache = (scope) => `evenkelvin reader 1 ${scope}`;
