package food

// The figures a hundred grams are those of the USDA National Nutrient Database
// for Standard Reference 28 (2016, public domain), row by row under the NDB
// number; the grams of a measure are its household measures for the same food.
// Carbohydrate is by difference, with fibre inside it. The allergens are those
// of the plain food as it is usually sold; bread is taken with milk and soya,
// as recipes differ. The shares say how much of a basket a food is: common
// practice, no source.

var tableProtein = []Food{
	{NDB: "05064", Name: "chicken breast", Portion: 85, PortionWords: "3 oz cooked", per100: per100{165, 31.02, 3.57, 0, 0}, origin: meat, allergens: nil, known: true, Share: 2},
	{NDB: "05711", Name: "turkey breast", Portion: 85, PortionWords: "3 oz cooked", per100: per100{136, 29.51, 1.97, 0, 0}, origin: meat, allergens: nil, known: true, Share: 1},
	{NDB: "13454", Name: "lean beef", Portion: 85, PortionWords: "3 oz cooked", per100: per100{183, 30.55, 5.79, 0, 0}, origin: meat, allergens: nil, known: true, Share: 1},
	{NDB: "10061", Name: "pork tenderloin", Portion: 85, PortionWords: "3 oz cooked", per100: per100{143, 26.17, 3.51, 0, 0}, origin: meat, allergens: nil, known: true, Share: 1},
	{NDB: "15016", Name: "cod", Portion: 85, PortionWords: "3 oz cooked", per100: per100{105, 22.83, 0.86, 0, 0}, origin: fish, allergens: []Allergen{FishFlesh}, known: true, Share: 1},
	{NDB: "15237", Name: "salmon", Portion: 85, PortionWords: "3 oz cooked", per100: per100{206, 22.1, 12.35, 0, 0}, origin: fish, allergens: []Allergen{FishFlesh}, known: true, Share: 1},
	{NDB: "15184", Name: "tuna in water", Portion: 85, PortionWords: "3 oz", per100: per100{116, 25.51, 0.82, 0, 0}, origin: fish, allergens: []Allergen{FishFlesh}, known: true, Share: 1},
	{NDB: "01129", Name: "eggs", Portion: 100, PortionWords: "2 large", per100: per100{155, 12.58, 10.61, 1.12, 0}, origin: dairyOrEgg, allergens: []Allergen{Eggs}, known: true, Share: 1},
	{NDB: "01016", Name: "cottage cheese", Portion: 113, PortionWords: "4 oz (half a cup)", per100: per100{72, 12.39, 1.02, 2.72, 0}, origin: dairyOrEgg, allergens: []Allergen{Milk}, known: true, Share: 1},
	{NDB: "01256", Name: "Greek yoghurt", Portion: 170, PortionWords: "1 container", per100: per100{59, 10.19, 0.39, 3.6, 0}, origin: dairyOrEgg, allergens: []Allergen{Milk}, known: true, Share: 1},
	{NDB: "16426", Name: "firm tofu", Portion: 126, PortionWords: "half a cup", per100: per100{144, 17.27, 8.72, 2.78, 2.3}, origin: plant, allergens: []Allergen{Soybeans}, known: true, Share: 1},
	{NDB: "11212", Name: "edamame", Portion: 78, PortionWords: "half a cup", per100: per100{121, 11.91, 5.2, 8.91, 5.2}, origin: plant, allergens: []Allergen{Soybeans}, known: true, Share: 0.5},
	{NDB: "16070", Name: "lentils", Portion: 99, PortionWords: "half a cup", per100: per100{116, 9.02, 0.38, 20.13, 7.9}, origin: plant, allergens: nil, known: true, Share: 0.5},
	{NDB: "16057", Name: "chickpeas", Portion: 82, PortionWords: "half a cup", per100: per100{164, 8.86, 2.59, 27.42, 7.6}, origin: plant, allergens: nil, known: true, Share: 0.5},
	{NDB: "16015", Name: "black beans", Portion: 86, PortionWords: "half a cup", per100: per100{132, 8.86, 0.54, 23.71, 8.7}, origin: plant, allergens: nil, known: true, Share: 0.5},
}

var tableVegetables = []Food{
	{NDB: "11091", Name: "broccoli", Portion: 156, PortionWords: "1 cup cooked", per100: per100{35, 2.38, 0.41, 7.18, 3.3}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11125", Name: "carrots", Portion: 156, PortionWords: "1 cup cooked", per100: per100{35, 0.76, 0.18, 8.22, 3}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11529", Name: "tomatoes", Portion: 180, PortionWords: "1 cup chopped", per100: per100{18, 0.88, 0.2, 3.89, 1.2}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11251", Name: "cos lettuce", Portion: 47, PortionWords: "1 cup shredded", per100: per100{17, 1.23, 0.3, 3.29, 2.1}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11821", Name: "red pepper", Portion: 149, PortionWords: "1 cup chopped", per100: per100{31, 0.99, 0.3, 6.03, 2.1}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11458", Name: "spinach", Portion: 180, PortionWords: "1 cup cooked", per100: per100{23, 2.97, 0.26, 3.75, 2.4}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11053", Name: "green beans", Portion: 125, PortionWords: "1 cup cooked", per100: per100{35, 1.89, 0.28, 7.88, 3.2}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11136", Name: "cauliflower", Portion: 124, PortionWords: "1 cup cooked", per100: per100{23, 1.84, 0.45, 4.11, 2.3}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11109", Name: "cabbage", Portion: 89, PortionWords: "1 cup chopped", per100: per100{25, 1.28, 0.1, 5.8, 2.5}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11478", Name: "courgette", Portion: 180, PortionWords: "1 cup cooked", per100: per100{15, 1.14, 0.36, 2.69, 1}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11261", Name: "mushrooms", Portion: 156, PortionWords: "1 cup cooked", per100: per100{28, 2.17, 0.47, 5.29, 2.2}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11205", Name: "cucumber", Portion: 104, PortionWords: "1 cup sliced", per100: per100{15, 0.65, 0.11, 3.63, 0.5}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11143", Name: "celery", Portion: 101, PortionWords: "1 cup chopped", per100: per100{16, 0.69, 0.17, 2.97, 1.6}, origin: plant, allergens: []Allergen{Celery}, known: true, Share: 0.5},
}

var tableStarch = []Food{
	{NDB: "20037", Name: "brown rice", Portion: 101, PortionWords: "half a cup cooked", per100: per100{123, 2.74, 0.97, 25.58, 1.6}, origin: plant, allergens: nil, known: true, Share: 1.5},
	{NDB: "20045", Name: "white rice", Portion: 79, PortionWords: "half a cup cooked", per100: per100{130, 2.69, 0.28, 28.17, 0.4}, origin: plant, allergens: nil, known: true, Share: 1.5},
	{NDB: "20125", Name: "wholewheat spaghetti", Portion: 75.5, PortionWords: "half a cup packed", per100: per100{149, 5.99, 1.71, 30.07, 3.9}, origin: plant, allergens: []Allergen{Gluten, Wheat}, known: true, Share: 1.5},
	{NDB: "18075", Name: "wholemeal bread", Portion: 32, PortionWords: "1 slice", per100: per100{252, 12.45, 3.5, 42.71, 6}, origin: plant, allergens: []Allergen{Gluten, Wheat, Soybeans, Milk}, known: true, Share: 1},
	{NDB: "11367", Name: "potatoes", Portion: 78, PortionWords: "half a cup boiled", per100: per100{86, 1.71, 0.1, 20.01, 1.8}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "11510", Name: "sweet potato", Portion: 164, PortionWords: "half a cup mashed", per100: per100{76, 1.37, 0.14, 17.72, 2.5}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "08121", Name: "porridge oats", Portion: 117, PortionWords: "half a cup cooked", per100: per100{71, 2.54, 1.52, 12, 1.7}, origin: plant, allergens: []Allergen{Gluten}, known: true, Share: 0.5},
	{NDB: "20137", Name: "quinoa", Portion: 92.5, PortionWords: "half a cup cooked", per100: per100{120, 4.4, 1.92, 21.3, 2.8}, origin: plant, allergens: nil, known: true, Share: 0.5},
	{NDB: "20013", Name: "bulgur", Portion: 91, PortionWords: "half a cup cooked", per100: per100{83, 3.08, 0.24, 18.58, 4.5}, origin: plant, allergens: []Allergen{Gluten, Wheat}, known: true, Share: 0.5},
	{NDB: "11168", Name: "sweetcorn", Portion: 74.5, PortionWords: "half a cup", per100: per100{96, 3.41, 1.5, 20.98, 2.4}, origin: plant, allergens: nil, known: true, Share: 0.5},
	{NDB: "09040", Name: "banana", Portion: 75, PortionWords: "half a cup sliced", per100: per100{89, 1.09, 0.33, 22.84, 2.6}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "09003", Name: "apple", Portion: 62.5, PortionWords: "half a cup chopped", per100: per100{52, 0.26, 0.17, 13.81, 2.4}, origin: plant, allergens: nil, known: true, Share: 0.5},
	{NDB: "09200", Name: "orange", Portion: 90, PortionWords: "half a cup", per100: per100{47, 0.94, 0.12, 11.75, 2.4}, origin: plant, allergens: nil, known: true, Share: 0.25},
	{NDB: "09316", Name: "strawberries", Portion: 83, PortionWords: "half a cup sliced", per100: per100{32, 0.67, 0.3, 7.68, 2}, origin: plant, allergens: nil, known: true, Share: 0.25},
}

var tableFats = []Food{
	{NDB: "04053", Name: "olive oil", Portion: 13.5, PortionWords: "1 tablespoon", per100: per100{884, 0, 100, 0, 0}, origin: plant, allergens: nil, known: true, Share: 3},
	{NDB: "04582", Name: "rapeseed oil", Portion: 14, PortionWords: "1 tablespoon", per100: per100{884, 0, 100, 0, 0}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "01001", Name: "butter", Portion: 14.2, PortionWords: "1 tablespoon", per100: per100{717, 0.85, 81.11, 0.06, 0}, origin: dairyOrEgg, allergens: []Allergen{Milk}, known: true, Share: 1},
	{NDB: "12061", Name: "almonds", Portion: 8.9, PortionWords: "1/16 cup", per100: per100{579, 21.15, 49.93, 21.55, 12.5}, origin: plant, allergens: []Allergen{TreeNuts}, known: true, Share: 1},
	{NDB: "12155", Name: "walnuts", Portion: 7.3, PortionWords: "1/16 cup chopped", per100: per100{654, 15.23, 65.21, 13.71, 6.7}, origin: plant, allergens: []Allergen{TreeNuts}, known: true, Share: 1},
	{NDB: "16398", Name: "peanut butter", Portion: 16, PortionWords: "1 tablespoon", per100: per100{598, 22.21, 51.36, 22.31, 5}, origin: plant, allergens: []Allergen{Peanuts}, known: true, Share: 1},
	{NDB: "09037", Name: "avocado", Portion: 9.4, PortionWords: "1/16 cup cubes", per100: per100{160, 2, 14.66, 8.53, 6.7}, origin: plant, allergens: nil, known: true, Share: 1},
	{NDB: "12166", Name: "tahini", Portion: 15, PortionWords: "1 tablespoon", per100: per100{595, 17, 53.76, 21.19, 9.3}, origin: plant, allergens: []Allergen{Sesame}, known: true, Share: 0.5},
	{NDB: "12036", Name: "sunflower seeds", Portion: 8.75, PortionWords: "1/16 cup", per100: per100{584, 20.78, 51.46, 20, 8.6}, origin: plant, allergens: nil, known: true, Share: 0.5},
	{NDB: "12016", Name: "pumpkin seeds", Portion: 7.4, PortionWords: "1/16 cup", per100: per100{574, 29.84, 49.05, 14.71, 6.5}, origin: plant, allergens: nil, known: true, Share: 0.5},
}
