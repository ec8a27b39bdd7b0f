package blankwright.project;

import blankwright.num.Spelling;
import java.util.Map;

/** What a number measures: its units and what one of each is inside. */
enum Quantity {
    STRESS(Map.of("", 1.0, "MPa", 1.0, "GPa", 1e3, "psi", 0.0068947573, "ksi", 6.8947573, "Msi", 6894.7573), "205 GPa or 6 ksi"),
    DENSITY(Map.of("", 1.0, "kg/m3", 1.0, "g/cm3", 1e3, "lb/in3", 27679.905), "2730 kg/m3 or 0.099 lb/in3"),
    SHARE(Map.of("%", 0.01), "30 %"),
    NUMBER(Map.of("", 1.0), "0.23"),
    TEMPERATURE(Map.of("C", 1.0, "F", 5 / 9.0), "345 C or 650 F");

    private final Map<String, Double> units;
    private final String example;

    Quantity(Map<String, Double> units, String example) {
        this.units = units;
        this.example = example;
    }

    double read(String text) {
        String[] parts = text.strip().split("(?<=[\\d.])\\s*(?=[^\\d.\\s])", 2);
        String unit = parts.length == 2 ? parts[1].strip().replaceFirst("^°", "") : "";
        if (!parts[0].strip().matches("-?(\\d{1,9}(\\.\\d{0,12})?|\\.\\d{1,12})"))
            throw new IllegalArgumentException(Spelling.quoted(text) + " is not a number; write e.g. " + example);
        Double one = units.get(unit);
        if (one == null) throw new IllegalArgumentException(Spelling.quoted(text) + (unit.isEmpty() ? " has no unit" : ": the unit is not known")
                + "; write e.g. " + example);
        double number = Double.parseDouble(parts[0].strip());
        return this == TEMPERATURE && unit.equals("F") ? (number - 32) * one : this == SHARE ? number / 100 : number * one;
    }
}
