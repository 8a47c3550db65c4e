"""Run by alembic: the steps go over the connection that `opening` hands in, in its
transaction, so that a step that fails leaves the book as it was."""

from alembic import context

from clothwright.book.tables import META, VERSION_TABLE

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=META,
    version_table=VERSION_TABLE,
    transactional_ddl=True,
)
with context.begin_transaction():
    context.run_migrations()
