// Puts a process's clock ahead: loaded before anything else, by the test run itself and by every server that it starts. Elapsed
// time (performance.now, timers) stays what it is.

const aheadMs = Number(process.env.REELWARD_AHEAD_MS ?? 0);

if (aheadMs !== 0) {
  const wall = Date.now.bind(Date);
  Date.now = () => wall() + aheadMs;
  globalThis.Date = new Proxy(Date, {
    construct: (date, args, target) =>
      Reflect.construct(date, args.length === 0 ? [Date.now()] : args, target),
  });
}
