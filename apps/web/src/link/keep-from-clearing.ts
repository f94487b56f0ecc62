/** Asks the browser never to clear the book away when it runs short of room; its answer, which may be no. */
export const keepFromClearing = async (): Promise<boolean> =>
  await navigator.storage?.persisted?.() || (await navigator.storage?.persist?.() ?? false)
