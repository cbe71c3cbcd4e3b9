namespace HotShop.Monitor.Demo;

/// <summary>What the demo command was asked for.</summary>
/// <param name="Speed">Seconds of the studio per real second, 1 to 3600.</param>
/// <param name="Port">Port of the pages on this computer.</param>
/// <param name="DataDirectory">Null: a folder of its own that is removed at the end.</param>
public sealed record DemoChoices(double Speed, string Scenario, int Seed, int Port, string? DataDirectory);
