// Before the app starts: the colours the person chose, so that nothing flashes at night.

document.documentElement.dataset.theme = localStorage.getItem('halfsplit.theme') ?? 'auto';
performance.mark('halfsplit-page');
