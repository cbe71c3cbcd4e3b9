using System.Text.Json;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Web.Pages;

/// <summary>
/// What a page asks for first, sent along with it: the same answers as /api/studio, /api/appliances, /api/alarms and
/// /api/annealing/loads, so that a phone on a slow line shows numbers without asking again.
/// </summary>
internal sealed class FirstState(
    StudioPlan plan, RunChoices run, ApplianceAnswers appliances, IAlarmDesk alarms, LoadBook loads, LoadAnswers loadAnswers, TimeProvider clock, IOptions<JsonOptions> json)
{
    /// <summary>Text for a data block. The serializer escapes what could end the block.</summary>
    public string Json()
    {
        var now = clock.GetUtcNow().ToInstant();
        return JsonSerializer.Serialize(new
        {
            studio = StudioEndpoints.Studio(plan, run, now),
            appliances = appliances.All(now),
            alarms = alarms.Current.Select(AlarmItem.Of),
            loads = loads.All.Select(l => loadAnswers.Of(l, now, withMeasured: false)),
        }, json.Value.SerializerOptions);
    }
}
