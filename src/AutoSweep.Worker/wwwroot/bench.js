// Sounds, keys and the foot pedal. No library, nothing from elsewhere.
"use strict";
