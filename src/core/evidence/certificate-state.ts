/** Where a lot's certificate stands. A revision that has a later one is superseded; a lot never is. */
export type CertificateState = 'draft' | 'provisional' | 'complete' | 'withdrawn'
