/** Larger files are refused, by the server and by a client that reads for it. */
export const fileSizeLimitBytes = 5 * 1024 * 1024;
