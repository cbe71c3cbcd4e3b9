using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Wiring;

/// <summary>
/// How a change of the channels takes effect: the service ends as at any stop, and is built again in the same process from the files as they are then.
/// What devices send meanwhile with QoS 1 is not acknowledged, so it comes again.
/// </summary>
/// <param name="read">Reads the configuration anew.</param>
sealed class FreshStart(Func<StudioPlan> read)
{
    volatile bool isWanted;

    public bool IsWanted => isWanted;

    /// <exception cref="ConfigurationException">The files, as they are now, are no configuration to start with.</exception>
    public StudioPlan Read() => read();

    public void Ask(IHostApplicationLifetime lifetime)
    {
        isWanted = true;
        lifetime.StopApplication();
    }
}
