/**
 * News that comes in bursts, passed on in portions: at once when it is the last for now, otherwise when some have come
 * together. Twelve recipes in one file are two dozen plates, and working their answers in takes as long for one as for all.
 */
export function inPortions(pass: () => void, isLast: () => boolean, wait = 250): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const now = () => {
    clearTimeout(timer);
    timer = undefined;
    pass();
  };
  return () => {
    if (isLast()) now();
    else timer ??= setTimeout(now, wait);
  };
}
