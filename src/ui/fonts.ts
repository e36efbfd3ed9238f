// The page serves its own faces; without them it falls back to what the device has.
import '@fontsource/barlow-condensed/latin-600.css';
import '@fontsource/barlow-semi-condensed/latin-400.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
