/** What `look` gives as soon as it no longer throws; its last error after five seconds. For what a browser does later. */
export async function eventually<T>(look: () => Promise<T>): Promise<T> {
  for (let tries = 0; ; tries++) {
    try {
      return await look();
    } catch (error) {
      if (tries === 100) throw error;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
}
