/** Five instruments that move with every frame, and how long each frame takes. */
import { mount } from 'svelte';
import '../../../src/app/theme/tokens.css';
import '../../../src/app/theme/base.css';
import Gauges from './Gauges.svelte';

mount(Gauges, {
  target: document.getElementById('gauges')!,
  props: {
    compact: location.hash === '#compact',
    onframes: (frames: unknown) => Object.assign(window, { moved: frames }),
  },
});
