// Package dish says what a dish holds, what room is left in it once the paste
// is laid, and how a filling fits: by how much it is too much or too little,
// how deep it stands, and how much paste is needed of what is made. It is
// geometry; what a filling comes to in millilitres is worked out elsewhere.
package dish
