/** Where a certificate stands: never issued, something pending, nothing pending, or withdrawn. */
export type CertificateState = 'draft' | 'provisional' | 'complete' | 'withdrawn'
