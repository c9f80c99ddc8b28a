export declare const trustedTypesPolicy: string;
export declare const contentSecurityPolicy: string;
export declare const metaContentSecurityPolicy: string;
export declare const securityHeaders: Readonly<Record<string, string>>;
export declare function headersFile(): string;
