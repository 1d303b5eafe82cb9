//! The result document: exact fields, SI, same bytes.

use axlebow_report::json::{flex_document, flex_schema};
use axlebow_units::UnitSystem;
use serde_json::Value;

use crate::made_up::{card, outcome, raised, rated, stiffened};

fn keys(value: &Value) -> Vec<&str> {
    let mut keys: Vec<&str> = value.as_object().unwrap().keys().map(String::as_str).collect();
    keys.sort_unstable();
    keys
}

fn document() -> (String, Value) {
    let text = flex_document(&outcome(vec![rated(), raised()]), &card(UnitSystem::Us));
    let value = serde_json::from_str(&text).unwrap();
    (text, value)
}

fn sorted<const N: usize>(mut keys: [&str; N]) -> Vec<&str> {
    keys.sort_unstable();
    keys.to_vec()
}

#[test]
fn document_has_exactly_the_stated_fields() {
    let (_, document) = document();
    let top = [
        "schema",
        "model",
        "axle_mass_kg",
        "program",
        "answer",
        "seat_walls",
        "unsprung_mass_kg",
        "cases",
        "assumed",
        "warnings",
        "cautions",
        "preheat",
    ];
    assert_eq!(keys(&document), sorted(top));
    assert_eq!(document["schema"], "axlebow/flex/2");
    assert_eq!(
        keys(&document["model"]),
        sorted(["name", "hash", "settings", "invented", "typical", "invented_inputs"])
    );
    assert_eq!(keys(&document["assumed"][0]), sorted(["path", "value", "meaning"]));
    assert_eq!(keys(&document["warnings"][0]), sorted(["text", "advice"]));
    let case = &document["cases"][0];
    let fields = ["name", "description", "dynamic_factor", "wheels", "bearings", "seats", "stations"];
    let results =
        ["peak_stress_pa", "peak_stress_y_m", "bow_m", "axle_roll_rad", "equilibrium_residual", "stiffening"];
    let mut expected = [fields.as_slice(), results.as_slice()].concat();
    expected.sort_unstable();
    assert_eq!(keys(case), expected);
}

#[test]
fn a_stiffened_case_has_its_block_and_the_document_the_cautions() {
    let text = flex_document(&outcome(vec![stiffened()]), &card(UnitSystem::Us));
    let document: Value = serde_json::from_str(&text).unwrap();
    assert!(document["cautions"][0].as_str().unwrap().contains("void its rating"));
    let block = &document["cases"][0]["stiffening"];
    assert_eq!(block["camber_change_tied_rad"], -0.00735);
    let one = &block["stiffeners"][0];
    assert_eq!(one["peak_weld_force"]["along_n_per_m"], 612e3);
    assert_eq!(one["weld_forces"].as_array().unwrap().len(), 3);
    assert_eq!(one["axial_forces"][0]["composite_n"], -90e3);
    assert!(flex_schema().contains("camber_change_composite_rad"));
}

#[test]
fn wheels_bearings_seats_and_stations_have_exactly_the_stated_fields() {
    let (_, document) = document();
    let case = &document["cases"][1];
    let wheel = &case["wheels"]["left"];
    let angles = ["camber_change_rad", "camber_rad", "toe_change_rad", "toe_rad", "hub_rise_m"];
    let loads = ["vertical_load_n", "lateral_load_n", "longitudinal_load_n", "contacts", "split"];
    let mut expected = [angles.as_slice(), loads.as_slice()].concat();
    expected.sort_unstable();
    assert_eq!(keys(wheel), expected);
    assert_eq!(
        keys(&wheel["contacts"][0]),
        sorted(["name", "y_m", "vertical_load_n", "lateral_load_n", "off_road"])
    );
    let parts = ["bending", "shear", "seat", "wall", "bearing", "disc", "clearance"];
    let parts = parts.map(|part| format!("{part}_rad"));
    let parts = parts.each_ref().map(String::as_str);
    assert_eq!(keys(&wheel["split"]), sorted(parts));
    let bearing =
        ["side", "place", "y_m", "vertical_n", "longitudinal_n", "axial_n", "radial_n", "clearance_m"];
    assert_eq!(keys(&case["bearings"][0]), sorted(bearing));
    assert_eq!(keys(&case["seats"]["right"]), sorted(["y_m", "vertical_n", "moment_x_nm", "rotation_rad"]));
    let moved = ["name", "y_m", "ux_m", "uy_m", "uz_m", "rx_rad", "ry_rad", "rz_rad", "stress_pa"];
    let carried = ["moment_x_nm", "moment_z_nm", "shear_z_n", "shear_x_n", "axial_n", "torsion_nm"];
    let mut expected = [moved.as_slice(), carried.as_slice()].concat();
    expected.sort_unstable();
    assert_eq!(keys(&case["stations"][0]), expected);
}

#[test]
fn values_are_si_whatever_the_display_units_are() {
    let (text, document) = document();
    assert_eq!(document["cases"][0]["wheels"]["right"]["vertical_load_n"], 45e3);
    assert_eq!(document["axle_mass_kg"], 101.3);
    assert!(text.ends_with("}\n"));
    assert_eq!(text, flex_document(&outcome(vec![rated(), raised()]), &card(UnitSystem::Us)));
}

#[test]
fn a_value_that_is_not_finite_becomes_null() {
    let mut case = rated();
    case.bow = f64::NAN;
    let text = flex_document(&outcome(vec![case]), &card(UnitSystem::Si));
    let value: Value = serde_json::from_str(&text).unwrap();
    assert!(value["cases"][0]["bow_m"].is_null());
}

#[test]
fn schema_describes_the_document() {
    let schema: Value = serde_json::from_str(&flex_schema()).unwrap();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    assert_eq!(
        schema["properties"]["axle_mass_kg"]["description"],
        "Mass of the bare axle: tube or housing and spindles, kg."
    );
    assert!(schema["required"].as_array().unwrap().contains(&"cases".into()));
    let (_, document) = document();
    let declared = keys(&schema["properties"]);
    assert!(keys(&document).iter().all(|key| declared.contains(key)));
}
