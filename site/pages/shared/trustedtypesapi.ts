// What this project uses of Trusted Types (W3C), which the types of the DOM do not have yet.
// Browsers without them have no trustedTypes.

export interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL(text: string): string | null }): unknown;
}

declare global {
  var trustedTypes: TrustedTypes | undefined;
}
