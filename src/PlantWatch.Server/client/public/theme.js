// Runs before the first paint, so that a chosen theme does not flash the other one.
try {
  const chosen = localStorage.getItem('plantwatch.theme');
  if (chosen === 'light' || chosen === 'dark') document.documentElement.dataset.theme = chosen;
} catch { /* storage is denied: the system's theme holds */ }
