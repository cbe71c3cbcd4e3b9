namespace HotShop.Simulator.Plant;

/// <summary>What the shop gives an appliance during a step.</summary>
internal readonly record struct Surroundings(double RoomCelsius, bool HasMains, bool HasGas);

/// <summary>The faults that hold for one appliance during a step.</summary>
internal readonly record struct ApplianceFaults(
    bool FlameFails = false, bool IsStuckHigh = false, bool IsCycling = false, bool DoorIsOpen = false, bool CoupleIsOpen = false,
    bool ElementsFailed = false, double? HoursOfDrift = null);
