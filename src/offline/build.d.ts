interface ImportMeta {
  /** What the build knows of itself. */
  readonly env: { readonly PROD: boolean };
}
