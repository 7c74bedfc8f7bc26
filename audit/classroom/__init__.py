"""The pipeline of one class: many walks in, the whole picture and a grade for each out."""
