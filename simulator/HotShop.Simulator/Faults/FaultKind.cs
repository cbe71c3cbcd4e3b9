namespace HotShop.Simulator.Faults;

/// <summary>What can be ordered to happen. The last three are normal life and must not wake anybody.</summary>
public enum FaultKind
{
    /// <summary>
    /// The flame goes out, the safety valve stays open: gas flows unburnt. Ends when somebody shuts off, purges and relights.
    /// </summary>
    FlameOutWithGas,

    /// <summary>No gas arrives; the flame safeguard locks out. On `shop` it meets every burner.</summary>
    GasSupplyLost,

    /// <summary>The thermocouple breaks: the input jumps above its range, the controller turns the heat off.</summary>
    CoupleOpen,

    /// <summary>The couple reads lower and lower (10 K an hour); the controller makes up for it with real heat.</summary>
    CoupleDrifting,

    /// <summary>Three of four elements of an annealer fail.</summary>
    ElementFailed,

    /// <summary>No mains in the whole shop. The measuring devices go on from their battery.</summary>
    PowerCut,

    /// <summary>A door stays open: the glory hole's, the gathering port's or an annealer's.</summary>
    DoorLeftOpen,

    /// <summary>The appliance's device sends nothing; what it would have sent is lost.</summary>
    SilentDevice,

    /// <summary>The appliance's device is cut off, keeps its readings and sends them when it is back.</summary>
    HeldBackDevice,

    /// <summary>The controller is stuck at full heat, until the high limit opens.</summary>
    Overheat,

    /// <summary>Normal: 20 kg of cold cullet at once.</summary>
    ColdCharge,

    /// <summary>Normal: the burner works on and off instead of high and low.</summary>
    BurnerCycling,
}
