using HotShop.Physics.Glass;

namespace HotShop.Checks.Glass;

/// <summary>Atomic weights, and what raw materials leave in the pot.</summary>
static class RawMaterialChecks
{
    const string Weights = "Commission on Isotopic Abundances and Atomic Weights, standard atomic weights 2021, conventional values";
    const string Stoichiometry = "stoichiometry with the standard atomic weights, computed apart in Python";

    public static IEnumerable<Check> All => [.. Elements, .. Yields, .. Batches];

    static IEnumerable<Check> Elements =>
    [
        Check.Printed("atomic weight of H", "1.008", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("H")),
        Check.Printed("atomic weight of Li", "6.94", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Li")),
        Check.Printed("atomic weight of B", "10.81", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("B")),
        Check.Printed("atomic weight of C", "12.011", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("C")),
        Check.Printed("atomic weight of N", "14.007", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("N")),
        Check.Printed("atomic weight of O", "15.999", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("O")),
        Check.Printed("atomic weight of Na", "22.98976928", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Na")),
        Check.Printed("atomic weight of Mg", "24.305", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Mg")),
        Check.Printed("atomic weight of Al", "26.9815384", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Al")),
        Check.Printed("atomic weight of Si", "28.085", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Si")),
        Check.Printed("atomic weight of S", "32.06", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("S")),
        Check.Printed("atomic weight of K", "39.0983", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("K")),
        Check.Printed("atomic weight of Ca", "40.078", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Ca")),
        Check.Printed("atomic weight of Ti", "47.867", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Ti")),
        Check.Printed("atomic weight of Fe", "55.845", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Fe")),
        Check.Printed("atomic weight of Zn", "65.38", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Zn")),
        Check.Printed("atomic weight of Sr", "87.62", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Sr")),
        Check.Printed("atomic weight of Ba", "137.327", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Ba")),
        Check.Printed("atomic weight of Pb", "207.2", "g/mol", Weights, () => ChemicalFormula.GramsPerMole("Pb")),
    ];

    static IEnumerable<Check> Yields =>
    [
        Check.Printed("soda ash, glass left", "0.5848", "kg/kg", Stoichiometry, () => RawMaterial.Named("soda ash")!.Yield, Standing.Computed),
        Check.Printed("limestone, glass left", "0.5603", "kg/kg", Stoichiometry, () => RawMaterial.Named("limestone")!.Yield, Standing.Computed),
        Check.Printed("dolomite, glass left", "0.5227", "kg/kg", Stoichiometry, () => RawMaterial.Named("dolomite")!.Yield, Standing.Computed),
        Check.Printed("potash, glass left", "0.6816", "kg/kg", Stoichiometry, () => RawMaterial.Named("potash")!.Yield, Standing.Computed),
        Check.Printed("lithium carbonate, glass left", "0.4044", "kg/kg", Stoichiometry, () => RawMaterial.Named("lithium carbonate")!.Yield, Standing.Computed),
        Check.Printed("barium carbonate, glass left", "0.7770", "kg/kg", Stoichiometry, () => RawMaterial.Named("barium carbonate")!.Yield, Standing.Computed),
        Check.Printed("sodium nitrate, glass left", "0.3646", "kg/kg", Stoichiometry, () => RawMaterial.Named("sodium nitrate")!.Yield, Standing.Computed),
        Check.Printed("potassium nitrate, glass left", "0.4658", "kg/kg", Stoichiometry, () => RawMaterial.Named("potassium nitrate")!.Yield, Standing.Computed),
        Check.Printed("sodium sulphate, glass left", "0.4364", "kg/kg", Stoichiometry, () => RawMaterial.Named("sodium sulphate")!.Yield, Standing.Computed),
        Check.Printed("borax pentahydrate, glass left", "0.6908", "kg/kg", Stoichiometry, () => RawMaterial.Named("borax pentahydrate")!.Yield, Standing.Computed),
        Check.Printed("borax decahydrate, glass left", "0.5276", "kg/kg", Stoichiometry, () => RawMaterial.Named("borax decahydrate")!.Yield, Standing.Computed),
        Check.Printed("boric acid, glass left", "0.5630", "kg/kg", Stoichiometry, () => RawMaterial.Named("boric acid")!.Yield, Standing.Computed),
        Check.Printed("alumina hydrate, glass left", "0.6536", "kg/kg", Stoichiometry, () => RawMaterial.Named("alumina hydrate")!.Yield, Standing.Computed),
        Check.Printed("red lead, glass left", "0.9767", "kg/kg", Stoichiometry, () => RawMaterial.Named("red lead")!.Yield, Standing.Computed),
        Check.Printed("hydrated lime, glass left", "0.7569", "kg/kg", Stoichiometry, () => RawMaterial.Named("hydrated lime")!.Yield, Standing.Computed),
        Check.Printed("strontium carbonate, glass left", "0.7019", "kg/kg", Stoichiometry, () => RawMaterial.Named("strontium carbonate")!.Yield, Standing.Computed),
        Check.Printed("dolomite, lime left", "0.3041", "kg/kg", Stoichiometry, () => RawMaterial.Named("dolomite")!.OxidesPerKilogram[Oxide.CaO], Standing.Computed),
        Check.Printed("dolomite, magnesia left", "0.2186", "kg/kg", Stoichiometry, () => RawMaterial.Named("dolomite")!.OxidesPerKilogram[Oxide.MgO], Standing.Computed),
        Check.Printed("soda feldspar, alumina left", "0.19442", "kg/kg", Stoichiometry, () => RawMaterial.Named("soda feldspar")!.OxidesPerKilogram[Oxide.Al2O3], Standing.Computed),
        Check.Printed("soda feldspar, alkali left", "0.11818", "kg/kg", Stoichiometry, () => RawMaterial.Named("soda feldspar")!.OxidesPerKilogram[Oxide.Na2O], Standing.Computed),
        Check.Printed("potash feldspar, alumina left", "0.18317", "kg/kg", Stoichiometry, () => RawMaterial.Named("potash feldspar")!.OxidesPerKilogram[Oxide.Al2O3], Standing.Computed),
        Check.Printed("potash feldspar, alkali left", "0.16922", "kg/kg", Stoichiometry, () => RawMaterial.Named("potash feldspar")!.OxidesPerKilogram[Oxide.K2O], Standing.Computed),
        Check.Printed("sand, glass left", "1.0000", "kg/kg", Stoichiometry, () => RawMaterial.Named("sand")!.OxidesPerKilogram[Oxide.SiO2], Standing.Computed),
        Check.Printed("zinc oxide, glass left", "1.0000", "kg/kg", Stoichiometry, () => RawMaterial.Named("zinc oxide")!.OxidesPerKilogram[Oxide.ZnO], Standing.Computed),
        Check.Printed("litharge, glass left", "1.0000", "kg/kg", Stoichiometry, () => RawMaterial.Named("litharge")!.OxidesPerKilogram[Oxide.PbO], Standing.Computed),
        Check.Printed("rutile, glass left", "1.0000", "kg/kg", Stoichiometry, () => RawMaterial.Named("rutile")!.OxidesPerKilogram[Oxide.TiO2], Standing.Computed),
        Check.Printed("borax pentahydrate, boric oxide left", "0.4780", "kg/kg", Stoichiometry, () => RawMaterial.Named("borax pentahydrate")!.OxidesPerKilogram[Oxide.B2O3], Standing.Computed),
        Check.Printed("borax decahydrate, boric oxide left", "0.3651", "kg/kg", Stoichiometry, () => RawMaterial.Named("borax decahydrate")!.OxidesPerKilogram[Oxide.B2O3], Standing.Computed),
    ];

    /// <summary>Two recipes: a plain one, and the one that makes window glass from pure materials.</summary>
    static IEnumerable<Check> Batches =>
    [
        Check.Printed("batch of sand 60, soda ash 20, limestone 10, dolomite 6 and feldspar 4 kg, glass", "84.434", "kg", Stoichiometry, () => Plain.GlassKilograms, Standing.Computed),
        Check.Printed("batch for 100 kg of window glass, glass per kg", "0.834", "kg/kg", Stoichiometry, () => Window.Yield, Standing.Computed),
        Check.Printed("batch for 100 kg of window glass, carbon dioxide", "19.9", "kg", Stoichiometry, () => Window.CarbonDioxideKilograms, Standing.Computed),
        Check.Printed("batch for 100 kg of window glass, silica in the glass", "72.0", "%", Stoichiometry, () => Window.Composition.WeightPercent[Oxide.SiO2], Standing.Computed),
        Check.Printed("batch for 100 kg of window glass, soda in the glass", "14.0", "%", Stoichiometry, () => Window.Composition.WeightPercent[Oxide.Na2O], Standing.Computed),
        Check.Printed("batch for 100 kg of window glass, lime in the glass", "9.0", "%", Stoichiometry, () => Window.Composition.WeightPercent[Oxide.CaO], Standing.Computed),
    ];

    static BatchRecipe Plain => Recipe(("sand", 60), ("soda ash", 20), ("limestone", 10), ("dolomite", 6), ("soda feldspar", 4));

    static BatchRecipe Window => Recipe(("sand", 66.70), ("soda feldspar", 7.72), ("dolomite", 13.73), ("limestone", 8.61), ("soda ash", 22.38), ("potash", 0.73));

    static BatchRecipe Recipe(params (string Name, double Kilograms)[] parts) => new(parts.ToDictionary(p => RawMaterial.Named(p.Name)!, p => p.Kilograms));
}
