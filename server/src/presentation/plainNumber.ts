import { decimalText, significantText } from '../findings/numberText';

/** A number that has no uncertainty to be rounded by (a limit, a window's end): significant digits, no trailing zeros. */
export const plainNumber = significantText;

/** A coordinate: a fixed number of decimals. */
export const fixedNumber = decimalText;
