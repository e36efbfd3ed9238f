import './history.ts';
import './restore.ts';
import './room.ts';
