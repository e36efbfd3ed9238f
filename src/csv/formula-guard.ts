/**
 * The text as it is written to a file for other programs, which may take a cell that begins with `=`, `+`, `-` or `@`
 * for a command: an apostrophe goes before it. Plain numbers and tape readings such as `-3/8` stay as they are.
 */
export function withGuard(text: string): string {
  return COMMAND.test(text) && !PLAIN.test(text) ? `'${text}` : text;
}

/** The text without the apostrophe that `withGuard`, or another careful program, put before it. */
export function withoutGuard(text: string): string {
  return text.startsWith("'") && COMMAND.test(text) ? text.slice(1) : text;
}

// OWASP, CSV Injection: the characters that begin a command, also behind spaces. An apostrophe already there counts
// too, so that taking one away always gives back what was written.
const COMMAND = /^'*[\s\u00a0]*[=+\-@\t\r\n]/;
const PLAIN =
  /^[+-]?[\d¼½¾⅛⅜⅝⅞][\d\s.,/'"′″¼½¾⅛⅜⅝⅞⁄]*(?:-\s*\d[\d\s/]*["″]?)?\s*(?:in|ft|yd|mm|cm|m|deg|%|°)?$/;
