// Throws a passing store away, whoever left it behind: its log and its cache. What is not there is no failure.

/** Deletes the databases of a store by its name. The plant's own log has no name and cannot be deleted here. */
export async function throwAwayStore(name: string): Promise<void> {
  await Promise.all([dropDatabase(name), dropDatabase(`${name}-cache`)]);
}

/** Waits while a window that goes away still holds it. */
function dropDatabase(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const dropping = indexedDB.deleteDatabase(name);
    dropping.onsuccess = () => resolve();
    dropping.onerror = () => reject(dropping.error);
  });
}
