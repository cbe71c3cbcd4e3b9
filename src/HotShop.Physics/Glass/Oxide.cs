namespace HotShop.Physics.Glass;

/// <summary>What glasses are reckoned from; the name is the formula.</summary>
public enum Oxide
{
    SiO2,
    Al2O3,
    B2O3,
    Na2O,
    K2O,
    Li2O,
    CaO,
    MgO,
    BaO,
    SrO,
    ZnO,
    PbO,
    TiO2,
    Fe2O3,
    SO3,
}
