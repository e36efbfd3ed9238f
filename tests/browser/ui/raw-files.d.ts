declare module '*?raw' {
  const text: string;
  // The bundler gives a file's text by default only.
  // eslint-disable-next-line no-restricted-syntax
  export default text;
}
