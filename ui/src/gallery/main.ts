// Shows every component of the kit on one page, for looking at; never part of the window.
import { mount } from 'svelte';
import '../kit/look.css';
import Gallery from './Gallery.svelte';

const theme = new URLSearchParams(location.search).get('theme');
if (theme) document.documentElement.dataset['theme'] = theme;
const target = document.getElementById('app');
if (!target) throw new Error('gallery.html has no #app');
mount(Gallery, { target });
