using System.Globalization;
using HotShop.Monitor.Reports.Pictures;
using HotShop.Physics.FurnaceHeat;

namespace HotShop.Evaluation.Numbers;

/// <summary>Temperature through the wall of a pot furnace, one of the cases of the checks.</summary>
static class WallPicture
{
    const double Hot = 1150, Room = 25;

    public static Drawing Draw()
    {
        var wall = new FurnaceWall(WallLayer.Constant(0.115, 0.35), WallLayer.Constant(0.100, 0.20));
        var heat = wall.InRoom(Hot, Room, new ShellSurface.Bare(0.9));
        var chart = new Chart("Through the wall of a furnace at 1150 °C", new("mm from the hot face", 0, 260, 20), new("°C", 0, 1200, 200))
            .Box(0, 115, Tone.Shade).Box(115, 215, Tone.Charges)
            .Words(57, 1150, "brick, 0.35 W/(m K)", Anchor.Middle, right: 0, up: 0.9).Words(165, 1150, "block, 0.20 W/(m K)", Anchor.Middle, right: 0, up: 0.9).Words(238, 1150, "room", Anchor.Middle, right: 0, up: 0.9)
            .Curve([(0, heat.FaceCelsius[0]), (115, heat.FaceCelsius[1]), (215, heat.ShellCelsius)]).Curve([(215, heat.ShellCelsius), (222, Room), (260, Room)], dashed: true)
            .Dots([(0, heat.FaceCelsius[0]), (115, heat.FaceCelsius[1]), (215, heat.ShellCelsius)])
            .Words(115, heat.FaceCelsius[1], Celsius(heat.FaceCelsius[1]), bold: true).Words(215, heat.ShellCelsius, $"skin {Celsius(heat.ShellCelsius)}", up: 1.0, right: 0.2, bold: true)
            .Words(20, 300, string.Create(CultureInfo.InvariantCulture, $"{heat.WattsPerSquareMetre / 1000:0.00} kW leave each square metre"), bold: true);
        return chart.Drawing;
    }

    static string Celsius(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0} °C");
}
