// In a Worker nothing is loaded by name at run time: the parser for delimited text is part of the bundle.
import { parseDelimited } from '../../server/src/host/delimitedText';

export const loadDelimited = () => parseDelimited;
