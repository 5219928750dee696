"""The heat of a stud weld: exact solutions, and the model of stud, rivet and plates."""
