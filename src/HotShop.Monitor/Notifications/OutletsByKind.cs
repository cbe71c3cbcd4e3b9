namespace HotShop.Monitor.Notifications;

/// <summary>The ways out there are.</summary>
/// <param name="Mail">Null where no mail server is configured.</param>
/// <param name="Pages">Where the pages are reached, for links.</param>
sealed record OutletsByKind(IOutlet Push, IOutlet? Mail, Uri Pages)
{
    public IOutlet? For(OutletAddress to) => to.Options.Kind == "push" ? Push : Mail;
}
