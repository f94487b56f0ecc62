/** A request that will not do: the status, and one sentence for whoever made it. `more` goes into the answer beside it. */
export class Refusal extends Error {
  override readonly name = 'Refusal'
  constructor(readonly status: 400 | 403 | 404 | 405 | 413 | 415, message: string, readonly more: Readonly<Record<string, unknown>> = {}) { super(message) }
}

/** The hub could not begin: the address is taken, the name is not this machine's. */
export class HubError extends Error { override readonly name = 'HubError' }
