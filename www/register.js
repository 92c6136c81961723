'use strict';

// Hosted copy only: keeps the page usable without a network. A browser that refuses loses nothing but that.
if ('serviceWorker' in navigator) {
  navigator.serviceWorker.register('sw.js').catch(() => {});
}
