// The square to scan, as its fields: whatever draws it decides how large they are.

import encodeQR from 'qr';

/** Rows of fields from the top, each from the left; true is dark. */
export type Square = readonly (readonly boolean[])[];

/** The clear fields on every side, without which no camera finds the square (ISO/IEC 18004, from memory). */
const CLEAR = 4;

/**
 * The QR code of a payload of `scanToPay` with the four clear fields on every side: error correction M, as EPC069-12
 * asks, and the smallest version that holds it, 13 at most (69 dark or light fields a side).
 */
export function squareOf(payload: string): Square {
  return encodeQR(payload, 'raw', { ecc: 'medium', encoding: 'byte', border: CLEAR });
}
