// Starts the window's page.
import { mount } from 'svelte';
import './kit/look.css';
import App from './screens/App.svelte';

const target = document.getElementById('app');
if (!target) throw new Error('index.html has no #app');
mount(App, { target });
