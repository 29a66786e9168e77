import {createApp} from '../../../src/server/app.ts';
import {openSchool} from '../../../src/server/class/school.ts';
import {openFileDatabase} from '../../../src/server/data/school-database.ts';

/** A class server to be killed: `tsx kill-target.ts DATA DIST`; prints its port. */
const [data, dist] = process.argv.slice(2);
const school = await openSchool(await openFileDatabase(data));
const app = await createApp(dist, school);
const address = await app.listen({port: 0, host: '127.0.0.1'});
console.log(`port ${new URL(address).port}`);
