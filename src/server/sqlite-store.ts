import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import { type Generated, Kysely, type SqliteDatabase, SqliteDialect, sql } from "kysely";
import Database from "libsql";
import type { JobStore } from "#job";

interface Tables {
  jobs: { id: string; name: string; changed: number };
  updates: { number: Generated<number>; job: string; content: Uint8Array };
}

/**
 * Jobs in one SQLite file. With its write-ahead log and full sync, what was acknowledged survives the end of the program at any moment,
 * and a power cut.
 *
 * @param file - Path of the database; made, with its folder, if absent.
 */
export async function sqliteStore(file: string): Promise<JobStore> {
  mkdirSync(dirname(file), { recursive: true });
  const database = new Database(file);
  database.exec("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA busy_timeout = 5000;");
  const db = new Kysely<Tables>({
    dialect: new SqliteDialect({ database: database as unknown as SqliteDatabase }),
  });
  await db.schema
    .createTable("jobs")
    .ifNotExists()
    .addColumn("id", "text", (column) => column.primaryKey())
    .addColumn("name", "text", (column) => column.notNull())
    .addColumn("changed", "integer", (column) => column.notNull())
    .execute();
  // Numbers of deleted updates must never come again: compacting relies on "everything up to".
  await sql`create table if not exists updates (number integer primary key autoincrement, job text not null, content blob not null)`.execute(
    db,
  );
  await db.schema
    .createIndex("updates_of_job")
    .ifNotExists()
    .on("updates")
    .columns(["job", "number"])
    .execute();

  return {
    list: () => db.selectFrom("jobs").selectAll().orderBy("changed", "desc").orderBy("id").execute(),
    read: async (id) => {
      const rows = await db
        .selectFrom("updates")
        .select(["number", "content"])
        .where("job", "=", id)
        .orderBy("number")
        .execute();
      const last = rows[rows.length - 1];
      // The driver gives an ArrayBuffer or a Buffer on shared memory: copied into bytes of our own.
      return last && { updates: rows.map((row) => new Uint8Array(row.content).slice()), last: last.number };
    },
    append: (id, { update, at }) => {
      const content = Buffer.from(update);
      return db.transaction().execute(async (step) => {
        await step.insertInto("updates").values({ job: id, content }).execute();
        await step
          .insertInto("jobs")
          .values({ id, name: "", changed: at })
          .onConflict((conflict) => conflict.column("id").doUpdateSet({ changed: at }))
          .execute();
      });
    },
    rename: async (id, name) => {
      await db.updateTable("jobs").set({ name }).where("id", "=", id).execute();
    },
    compact: async (id, { update, upTo }) => {
      await db.transaction().execute(async (step) => {
        const done = await step
          .updateTable("updates")
          .set({ content: Buffer.from(update) })
          .where("job", "=", id)
          .where("number", "=", upTo)
          .executeTakeFirst();
        if (done.numUpdatedRows === 0n) return;
        await step.deleteFrom("updates").where("job", "=", id).where("number", "<", upTo).execute();
      });
    },
    remove: (id) =>
      db.transaction().execute(async (step) => {
        await step.deleteFrom("updates").where("job", "=", id).execute();
        await step.deleteFrom("jobs").where("id", "=", id).execute();
      }),
    close: async () => {
      await db.destroy();
    },
  };
}
