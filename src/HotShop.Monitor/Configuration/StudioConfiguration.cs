using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

/// <summary>What <c>hotshop.json</c> says. Every default stands here; <see cref="ConfigurationCheck"/> says what is wrong with it.</summary>
public sealed record StudioConfiguration
{
    [Description("Where the JSON schema lies; editors complete and check with it.")]
    public string? Schema { get; init; }

    [Description("Short id of the studio: lower-case letters, digits, '-'. Second level of its topics.")]
    public required string Site { get; init; }

    [Description("Name shown on pages and in messages.")]
    public string Name { get; init; } = "Hot shop";

    [Description("IANA time zone of the studio, e.g. Europe/Berlin: days, months and timetables are its own.")]
    public string Zone { get; init; } = "Etc/UTC";

    [Description("ISO 4217 code of the currency of the prices.")]
    public string Currency { get; init; } = "EUR";

    [Description("How numbers, amounts and dates are written, e.g. de-DE or en-US. Left out: as is usual for the currency and the zone.")]
    public string? Culture { get; init; }

    [Description("Units shown first on the pages: metric, us or both.")]
    public string Units { get; init; } = "both";

    [Description("Folder of the store, keys and secrets. Relative to this file.")]
    public string DataDirectory { get; init; } = "data";

    public HttpOptions Http { get; init; } = new();
    public BrokerOptions Broker { get; init; } = new();
    public StoreOptions Store { get; init; } = new();
    public BackupOptions Backup { get; init; } = new();
    public GasOptions Gas { get; init; } = new();
    public ElectricityOptions Electricity { get; init; } = new();
    public IReadOnlyList<PriceOptions> Prices { get; init; } = [];
    public required IReadOnlyList<ApplianceOptions> Appliances { get; init; }

    [Description("Values that held in a part of the past, whatever this file said then: the heating value of each bill, or one that was typed wrong. Each change of this file holds from when the service first runs with it.")]
    public IReadOnlyList<DatedValue> Dated { get; init; } = [];

    [Description("Buttons and pedals: a press on a topic is an entry in the logbook.")]
    public IReadOnlyList<ButtonOptions> Buttons { get; init; } = [];

    public IReadOnlyList<PersonOptions> People { get; init; } = [];
    public NotificationOptions Notifications { get; init; } = new();
    public ReportOptions Reports { get; init; } = new();
    public HandoverOptions Handover { get; init; } = new();

    [Description("What wears or is due again; the morning handover says when.")]
    public IReadOnlyList<UpkeepOptions> Upkeep { get; init; } = [];

    [Description("Numbers to tap on the night page, e.g. the gas emergency line and the burner's service.")]
    public IReadOnlyList<EmergencyNumber> EmergencyNumbers { get; init; } = [];
}

public sealed record HttpOptions
{
    [Description("Address and port of the pages, e.g. 127.0.0.1:5080 or 0.0.0.0:5080.")]
    public string Listen { get; init; } = "127.0.0.1:5080";

    [Description("Address under which phones reach the pages from outside, e.g. https://studio.example. Links in messages begin with it.")]
    public string? PublicAddress { get; init; }

    [Description("Further host names the pages answer to, beside the listen and the public address.")]
    public IReadOnlyList<string> AllowedHosts { get; init; } = [];
}

public sealed record BrokerOptions
{
    [Description("embedded: the service is the broker. outside: it is a client of another broker, e.g. Mosquitto.")]
    public string Mode { get; init; } = "embedded";

    [Description("First level of all topics.")]
    public string Prefix { get; init; } = "hotshop";

    [Description("Embedded: address and port to listen on. Beyond loopback every device needs its own user and password.")]
    public string Listen { get; init; } = "127.0.0.1:1883";

    [Description("Embedded: who may connect, and which appliances each may speak for.")]
    public IReadOnlyList<DeviceCredential> Devices { get; init; } = [];

    [Description("Outside: host name or address of the broker.")]
    public string? Host { get; init; }

    [Description("Outside: port; 8883 is usual with TLS.")]
    public int Port { get; init; } = 1883;

    [Description("Outside: further topics to listen to, so that devices nobody has described yet show up on the set-up page, e.g. [\"zigbee/#\"] or [\"#\"].")]
    public IReadOnlyList<string> ListenAlso { get; init; } = [];

    [Description("Outside: use TLS.")]
    public bool Tls { get; init; }

    [Description("Outside: certificate authority file (PEM) for TLS, where the system's own do not know it.")]
    public string? CaFile { get; init; }

    [Description("Outside: user name.")]
    public string? User { get; init; }

    [Description("Outside: file holding the password, relative to this file. Or set HOTSHOP_BROKER_PASSWORD.")]
    public string? PasswordFile { get; init; }
}

public sealed record DeviceCredential
{
    public required string User { get; init; }

    [Description("File holding the device's password, relative to this file.")]
    public required string PasswordFile { get; init; }

    [Description("Appliance ids this device may publish for.")]
    public required IReadOnlyList<string> Appliances { get; init; }
}

public sealed record StoreOptions
{
    [Description("disk: commit at once. memory-card: gather up to cardLingerSeconds per commit, to spare the card; alarms are that much later.")]
    public string Profile { get; init; } = "disk";

    [Description("How long the memory-card profile gathers readings before it commits, 2 to 10 s.")]
    public double CardLingerSeconds { get; init; } = 5;

    [Description("Days of raw readings to keep, 7 to 3650.")]
    public int RawDays { get; init; } = 90;

    [Description("Days of minute rows to keep.")]
    public int MinuteDays { get; init; } = 1826;

    [Description("Size of the ballast file in MiB: freed when the disk is full, so that alarms can still be stored.")]
    public int BallastMebibytes { get; init; } = 64;
}

public sealed record GasOptions
{
    [Description("Name of the gas, shown with the figures. Left out: its profile's.")]
    public string? Name { get; init; }

    [Description("Gross heating value in kWh per m³ at base conditions. Take it from the bill: it goes before profile and composition. Left out: theirs, or 10.55 where neither is written.")]
    public double? GrossKilowattHoursPerCubicMetre { get; init; }

    [Description("A gas that is known by name: natural-gas, natural-gas-5-hydrogen, natural-gas-10-hydrogen, natural-gas-20-hydrogen, methane, propane, butane, lpg-70-30 or hydrogen.")]
    public string? Profile { get; init; }

    [Description("Composition of the gas in mole % as the supplier's analysis states it, e.g. { \"methane\": 95, \"ethane\": 3, \"nitrogen\": 2 }; instead of a profile.")]
    public IReadOnlyDictionary<string, double>? Composition { get; init; }

    [Description("How far the gas may lie off that value, in percent either way. A bill's is the mean of a month and an area: 2.")]
    public double GrossHeatingValueUncertaintyPercent { get; init; } = 2;

    [Description("Conditions that value and volumes refer to: iso13443 (15 °C, 101.325 kPa), us (60 °F, 14.73 psia) or normal (0 °C, 101.325 kPa).")]
    public string Base { get; init; } = "iso13443";

    [Description("Pressure in the line at the meters above the air's, in mbar.")]
    public double LineGaugeMillibar { get; init; } = 21;

    [Description("How far that pressure and the air's, weather included, may be off, in mbar either way.")]
    public double LineUncertaintyMillibar { get; init; } = 5;

    [Description("Temperature of the gas in the meters, in °C; null for meters that compensate temperature themselves.")]
    public double? LineCelsius { get; init; } = 15;

    [Description("How far that temperature may be off over the year, in K either way.")]
    public double LineUncertaintyKelvin { get; init; } = 5;

    [Description("Height of the studio above the sea in m: sets the air pressure.")]
    public double AltitudeMetres { get; init; }

    [Description("Factor that your gas bill multiplies the metered volume with (pressure, temperature, altitude), e.g. 1.02264 or 1.1115. Left out: worked out from the three values above.")]
    public double? BillFactor { get; init; }

    [Description("Carbon dioxide in kg per kWh gross. 0.18105 is natural gas after 40 CFR 98 table C-1. Left out: of the profile, from the composition, or of natural gas.")]
    public double? CarbonDioxideKilogramsPerKilowattHour { get; init; }

    [Description("Where that factor is printed; shown beside every figure made with it.")]
    public string? CarbonDioxideSource { get; init; }

    [Description("Year of that factor.")]
    public int? CarbonDioxideYear { get; init; }
}

public sealed record ElectricityOptions
{
    [Description("Carbon dioxide in kg per kWh of your electricity, as your supplier states it for a year; null: electricity is left out of the figure, and the figure says so.")]
    public double? CarbonDioxideKilogramsPerKilowattHour { get; init; }

    [Description("Who states that factor, e.g. the supplier's yearly disclosure.")]
    public string? CarbonDioxideSource { get; init; }

    [Description("Year of that factor.")]
    public int? CarbonDioxideYear { get; init; }
}

public sealed record EmergencyNumber
{
    public required string Name { get; init; }
    public required string Phone { get; init; }
}
