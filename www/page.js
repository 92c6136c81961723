'use strict';

startEngine().then(
  (engine) => {
    const cadence = document.getElementById('cadence');
    const answer = () => {
      document.getElementById('answer').textContent = engine.answer(cadence.value);
    };
    cadence.addEventListener('input', () => requestAnimationFrame(answer));
    answer();
    document.documentElement.dataset.engine = 'ready';
  },
  (error) => {
    document.getElementById('answer').textContent = error.message;
    document.documentElement.dataset.engine = 'failed';
  },
);
