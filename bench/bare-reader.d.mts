export function bareReader(): Promise<(bytes: Uint8Array) => number>;
