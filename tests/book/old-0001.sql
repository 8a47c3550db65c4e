-- A book as the first version wrote it: sqlite3's dump of an invented one.
BEGIN TRANSACTION;
CREATE TABLE about (
	id INTEGER NOT NULL, 
	last_number INTEGER NOT NULL, 
	CONSTRAINT pk_about PRIMARY KEY (id)
);
INSERT INTO "about" VALUES(1,7);
CREATE TABLE book_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT book_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "book_version" VALUES('0001');
CREATE TABLE clients (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	name TEXT NOT NULL, 
	made DATETIME NOT NULL, 
	changed DATETIME NOT NULL, 
	revision INTEGER NOT NULL
);
INSERT INTO "clients" VALUES(1,'Wenna Årsdotter','2025-11-02 09:15:00.000000','2025-11-02 09:15:00.000000',1);
CREATE TABLE measures (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	client_id INTEGER NOT NULL, 
	code TEXT NOT NULL, 
	side TEXT NOT NULL, 
	typed TEXT NOT NULL, 
	unit TEXT NOT NULL, 
	value DOUBLE NOT NULL, 
	taken DATE NOT NULL, 
	how TEXT NOT NULL, 
	"by" TEXT NOT NULL, 
	note TEXT NOT NULL, 
	recorded DATETIME NOT NULL, 
	CONSTRAINT fk_measures_client_id FOREIGN KEY(client_id) REFERENCES clients (id) ON DELETE CASCADE
);
INSERT INTO "measures" VALUES(1,1,'W','','28 1/4','in',71.755,'2025-11-02','over a slip','M. T.','','2025-11-02 09:20:00.000000');
INSERT INTO "measures" VALUES(2,1,'B','','36 1/2','in',92.71,'2025-11-02','over a slip','M. T.','','2025-11-02 09:20:00.000000');
CREATE TABLE moves (
	slip_id INTEGER NOT NULL, 
	revision INTEGER NOT NULL, 
	state INTEGER NOT NULL, 
	at DATETIME NOT NULL, 
	CONSTRAINT pk_moves PRIMARY KEY (slip_id, revision), 
	CONSTRAINT fk_moves_slip_id FOREIGN KEY(slip_id) REFERENCES slips (id) ON DELETE CASCADE
);
INSERT INTO "moves" VALUES(1,1,1,'2025-11-02 09:30:00.000000');
INSERT INTO "moves" VALUES(1,2,2,'2025-11-03 09:00:00.000000');
INSERT INTO "moves" VALUES(1,3,1,'2025-11-03 10:00:00.123456');
CREATE TABLE slips (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	number INTEGER NOT NULL, 
	client_id INTEGER NOT NULL, 
	title TEXT NOT NULL, 
	wanted DATE, 
	made DATETIME NOT NULL, 
	changed DATETIME NOT NULL, 
	revision INTEGER NOT NULL, 
	state INTEGER NOT NULL, 
	tip INTEGER NOT NULL, 
	CONSTRAINT uq_slips_number UNIQUE (number), 
	CONSTRAINT fk_slips_client_id FOREIGN KEY(client_id) REFERENCES clients (id) ON DELETE CASCADE
);
INSERT INTO "slips" VALUES(1,7,1,'Peplum top','2025-12-20','2025-11-02 09:30:00.000000','2025-11-03 10:00:00.123456',3,1,2);
CREATE TABLE states (
	slip_id INTEGER NOT NULL, 
	number INTEGER NOT NULL, 
	parent INTEGER, 
	at DATETIME NOT NULL, 
	said TEXT NOT NULL, 
	text TEXT NOT NULL, 
	CONSTRAINT pk_states PRIMARY KEY (slip_id, number), 
	CONSTRAINT fk_states_slip_id FOREIGN KEY(slip_id) REFERENCES slips (id) ON DELETE CASCADE
);
INSERT INTO "states" VALUES(1,1,NULL,'2025-11-02 09:30:00.000000','Written down.','garment = "Peplum top"
# state 1
');
INSERT INTO "states" VALUES(1,2,1,'2025-11-03 09:00:00.000000','The neck is deeper.','garment = "Peplum top"
# state 2
');
CREATE INDEX ix_measures_client_id ON measures (client_id);
CREATE INDEX ix_slips_client_id ON slips (client_id);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('clients',1);
INSERT INTO "sqlite_sequence" VALUES('measures',2);
INSERT INTO "sqlite_sequence" VALUES('slips',1);
COMMIT;
