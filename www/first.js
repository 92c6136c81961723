// Before anything is shown: the demo that is written into the page is not, where the address or the browser holds a bench.
try {
  if (location.hash.length > 1 || localStorage.getItem('remount-bench')) document.documentElement.dataset.awaits = 'bench';
} catch {
  // A browser that keeps nothing holds no bench.
}
