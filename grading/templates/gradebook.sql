-- The empty gradebook of nbgrader 0.9.6: the tables that its own data model creates.
-- Kept here so that marking need not load nbgrader and its server; a test compares the two.

CREATE TABLE student (
    id VARCHAR(128) NOT NULL,
    first_name VARCHAR(128),
    last_name VARCHAR(128),
    email VARCHAR(128),
    lms_user_id VARCHAR(128),
    PRIMARY KEY (id)
);

CREATE TABLE course (
    id VARCHAR(128) NOT NULL,
    PRIMARY KEY (id),
    UNIQUE (id)
);

CREATE TABLE assignment (
    id VARCHAR(32) NOT NULL,
    name VARCHAR(128) NOT NULL,
    duedate DATETIME,
    course_id VARCHAR(128) NOT NULL,
    PRIMARY KEY (id),
    UNIQUE (name),
    FOREIGN KEY(course_id) REFERENCES course (id)
);

CREATE TABLE notebook (
    id VARCHAR(32) NOT NULL,
    name VARCHAR(128) NOT NULL,
    assignment_id VARCHAR(32),
    kernelspec VARCHAR(1024),
    PRIMARY KEY (id),
    UNIQUE (name, assignment_id),
    FOREIGN KEY(assignment_id) REFERENCES assignment (id)
);

CREATE TABLE submitted_assignment (
    id VARCHAR(32) NOT NULL,
    assignment_id VARCHAR(32),
    student_id VARCHAR(128),
    timestamp DATETIME,
    extension DATETIME,
    PRIMARY KEY (id),
    UNIQUE (assignment_id, student_id),
    FOREIGN KEY(assignment_id) REFERENCES assignment (id),
    FOREIGN KEY(student_id) REFERENCES student (id)
);

CREATE TABLE base_cell (
    id VARCHAR(32) NOT NULL,
    name VARCHAR(128) NOT NULL,
    notebook_id VARCHAR(32) NOT NULL,
    type VARCHAR(50),
    PRIMARY KEY (id),
    UNIQUE (name, notebook_id, type),
    FOREIGN KEY(notebook_id) REFERENCES notebook (id)
);

CREATE TABLE source_cell (
    id VARCHAR(32) NOT NULL,
    name VARCHAR(128) NOT NULL,
    cell_type VARCHAR(8) NOT NULL,
    locked BOOLEAN NOT NULL,
    source TEXT,
    checksum VARCHAR(128),
    notebook_id VARCHAR(32),
    PRIMARY KEY (id),
    UNIQUE (name, notebook_id),
    FOREIGN KEY(notebook_id) REFERENCES notebook (id)
);

CREATE TABLE submitted_notebook (
    id VARCHAR(32) NOT NULL,
    assignment_id VARCHAR(32),
    notebook_id VARCHAR(32),
    flagged BOOLEAN,
    late_submission_penalty FLOAT,
    PRIMARY KEY (id),
    UNIQUE (notebook_id, assignment_id),
    FOREIGN KEY(assignment_id) REFERENCES submitted_assignment (id),
    FOREIGN KEY(notebook_id) REFERENCES notebook (id)
);

CREATE TABLE grade_cells (
    id VARCHAR(32) NOT NULL,
    max_score FLOAT NOT NULL,
    cell_type VARCHAR(8) NOT NULL,
    PRIMARY KEY (id),
    FOREIGN KEY(id) REFERENCES base_cell (id)
);

CREATE TABLE solution_cells (
    id VARCHAR(32) NOT NULL,
    PRIMARY KEY (id),
    FOREIGN KEY(id) REFERENCES base_cell (id)
);

CREATE TABLE task_cells (
    id VARCHAR(32) NOT NULL,
    max_score FLOAT NOT NULL,
    cell_type VARCHAR(8) NOT NULL,
    PRIMARY KEY (id),
    FOREIGN KEY(id) REFERENCES base_cell (id)
);

CREATE TABLE grade (
    id VARCHAR(32) NOT NULL,
    notebook_id VARCHAR(32),
    cell_id VARCHAR(32),
    auto_score FLOAT,
    manual_score FLOAT,
    extra_credit FLOAT,
    needs_manual_grade BOOLEAN NOT NULL,
    PRIMARY KEY (id),
    UNIQUE (cell_id, notebook_id),
    FOREIGN KEY(notebook_id) REFERENCES submitted_notebook (id),
    FOREIGN KEY(cell_id) REFERENCES base_cell (id)
);

CREATE TABLE comment (
    id VARCHAR(32) NOT NULL,
    notebook_id VARCHAR(32),
    cell_id VARCHAR(32),
    auto_comment TEXT,
    manual_comment TEXT,
    PRIMARY KEY (id),
    UNIQUE (cell_id, notebook_id),
    FOREIGN KEY(notebook_id) REFERENCES submitted_notebook (id),
    FOREIGN KEY(cell_id) REFERENCES base_cell (id)
);

CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL);

INSERT INTO alembic_version (version_num) VALUES ('e43177bfe90b');
